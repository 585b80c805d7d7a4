import { expect, test } from 'vitest'
import type { ClientMessage } from '../../../../server/contract/live.ts'
import { Outbox } from '../../../../web/src/lib/live/outbox.svelte.ts'

function drawer() {
  const kept = new Map<string, string>()
  return { getItem: (key: string) => kept.get(key) ?? null, setItem: (key: string, value: string) => void kept.set(key, value) }
}
const wet = { action: 'wet-condenser' } as const

test('a second touch within two seconds counts once, a later one counts again', () => {
  let now = 0
  const box = new Outbox(drawer(), 'a', () => now)
  expect(box.add('k', wet, 1000)).not.toBeNull()
  now = 1900
  expect(box.add('k', wet, 2900)).toBeNull()
  now = 4000
  expect(box.add('k', wet, 5000)).not.toBeNull()
  expect(box.waiting).toHaveLength(2)
})

test('another act within two seconds is another act', () => {
  const box = new Outbox(drawer(), 'a', () => 0)
  box.add('k', wet, 1)
  expect(box.add('k', { action: 'refuel' }, 1)).not.toBeNull()
})

test('entries outlive a reload and go out once, under the id they had', () => {
  const one = drawer()
  const first = new Outbox(one, 'a', () => 0)
  const entry = first.add('k', wet, 1000)
  const sent: ClientMessage[] = []
  const second = new Outbox(one, 'a', () => 0)
  second.sendAll((message) => sent.push(message) > 0)
  second.taken(entry?.id ?? '')
  second.sendAll((message) => sent.push(message) > 0)
  expect(sent).toEqual([{ type: 'act', id: entry?.id, kiln: 'k', act: wet, doneAt: 1000 }])
  expect(new Outbox(one, 'a', () => 0).entries).toEqual([])
})

test('a demo and a kiln never share a drawer', () => {
  const one = drawer()
  new Outbox(one, 'outbox /demo/', () => 0).add('k', wet, 1)
  expect(new Outbox(one, 'outbox /', () => 0).entries).toEqual([])
})

test('a refused entry stays to be read and is not sent again', () => {
  const box = new Outbox(drawer(), 'a', () => 0)
  const entry = box.add('k', wet, 1)
  box.refusedWith(entry?.id ?? '', 'not-allowed')
  const sent: ClientMessage[] = []
  box.sendAll((message) => sent.push(message) > 0)
  expect(sent).toEqual([])
  expect(box.refused).toHaveLength(1)
})

test('a drawer that holds nonsense is an empty drawer', () => {
  const broken = { getItem: () => '{"a":', setItem: () => {} }
  expect(new Outbox(broken, 'a').entries).toEqual([])
})
