import { expect, test } from 'vitest'
import type { KilnView, ServerMessage } from '../../../../server/contract/live.ts'
import { LiveState } from '../../../../web/src/lib/live/live.svelte.ts'
import { channel, kiln, site } from '../../../browser/fake/kiln.ts'

const hello = (seq: number, view: KilnView = kiln()): ServerMessage => {
  return { type: 'hello', seq, version: '1', now: 0, speed: 1, clockSure: true, site: site(), kilns: { 'kiln-1': view } }
}
const part = (seq: number, name: keyof KilnView, value: unknown): ServerMessage => {
  return { type: 'kiln', seq, now: 0, kiln: 'kiln-1', part: name, value }
}

/** What waits for the frame runs when the test paints it. */
function state(): { live: LiveState; paint: () => void; frames: () => number } {
  const waiting: (() => void)[] = []
  let asked = 0
  const live = new LiveState((run) => {
    asked += 1
    waiting.push(run)
  })
  const paint = (): void => waiting.splice(0).forEach((run) => run())
  return { live, paint, frames: () => asked }
}

test('a number is taken at once; what came before it waits until it is painted, and is not lost', () => {
  const { live, paint } = state()
  live.apply(hello(0))
  live.apply(part(1, 'hands', { next: 'check-drip', at: 5 }))
  live.apply(part(2, 'channels', [channel('smoke', 99)]))
  expect(live.kiln?.channels[0]?.value).toBe(99)
  expect(live.kiln?.hands?.next).toBe('feed-fire')
  paint()
  expect(live.kiln?.hands?.next).toBe('check-drip')
})

test('of a part that came twice the newest is taken, in one frame with the others', () => {
  const { live, paint, frames } = state()
  live.apply(hello(0))
  live.apply(part(1, 'hands', { next: 'check-drip', at: 5 }))
  live.apply(part(2, 'hints', []))
  live.apply(part(3, 'hands', null))
  expect(frames()).toBe(1)
  paint()
  expect([live.kiln?.hands, live.kiln?.hints]).toEqual([null, []])
})

test('what still waits when the link comes back is older than the greeting', () => {
  const { live, paint } = state()
  live.apply(hello(0))
  live.apply(part(1, 'hands', { next: 'check-drip', at: 5 }))
  live.apply(hello(9))
  paint()
  expect(live.kiln?.hands?.next).toBe('feed-fire')
  // and an old part after it is turned away
  live.apply(part(8, 'channels', []))
  expect(live.kiln?.channels).toHaveLength(4)
})
