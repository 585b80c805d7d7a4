import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { healthEntry } from '../../../server/runtime/entry.ts'
import { Inbox } from '../../../server/runtime/inbox.ts'
import { SteppedClock } from '../../../server/runtime/stepped-clock.ts'
import { createMemoryStore } from '../../../server/storage/memory.ts'
import { StoreProblem } from '../../../server/storage/store.ts'
import type { Store } from '../../../server/storage/store.ts'

const start = 1_000_000_000_000

/** A store whose appends wait until they are let go or made to fail. */
function slowStore() {
  const waiting: { resolve: () => void; reject: (problem: Error) => void }[] = []
  const store: Store = Object.assign(createMemoryStore(), {
    append: () => new Promise<void>((resolve, reject) => waiting.push({ resolve, reject })),
  })
  return { store, waiting }
}

function inboxOf(store: Store, last = { seq: 0, at: 0 }) {
  const heard: string[] = []
  const clock = new SteppedClock(start)
  const ears = {
    fold: (entry: { seq: number }) => heard.push(`entry ${entry.seq}`),
    tick: () => heard.push('tick'),
    storage: (failing: boolean) => heard.push(failing ? 'failing' : 'storing'),
  }
  return { inbox: new Inbox(store, clock, ears, last), heard, clock }
}
const entry = (stamp: { seq: number; at: number }) => healthEntry(stamp, { code: 'service-failing', on: true })

describe('the inbox', () => {
  beforeEach(() => void vi.useFakeTimers())
  afterEach(() => void vi.useRealTimers())

  test('folds after COMMIT and in the order of arrival, seconds included', async () => {
    const { store, waiting } = slowStore()
    const { inbox, heard } = inboxOf(store)
    const first = inbox.accept(entry)
    inbox.tick()
    const second = inbox.accept(entry)
    await vi.advanceTimersByTimeAsync(10)
    expect(heard).toEqual([])
    waiting[1]?.resolve()
    await second
    expect(heard).toEqual([])
    waiting[0]?.resolve()
    await first
    expect(heard).toEqual(['entry 1', 'tick', 'entry 2'])
  })

  test('when the store fails the folds go on, nothing is acknowledged, and it is told once', async () => {
    const { store, waiting } = slowStore()
    const { inbox, heard } = inboxOf(store)
    const problem = new StoreProblem('disk-full', 'full')
    const first = expect(inbox.accept(entry)).rejects.toBe(problem)
    const second = expect(inbox.accept(entry)).rejects.toBe(problem)
    for (const one of waiting) one.reject(problem)
    await Promise.all([first, second])
    expect(heard).toEqual(['entry 1', 'failing', 'entry 2'])
    const third = inbox.accept(entry)
    waiting[2]?.resolve()
    await third
    expect(heard.slice(3)).toEqual(['entry 3', 'storing'])
  })

  test('a store that takes longer than a second holds no alarm up; what it stores later is acknowledged later', async () => {
    const { store, waiting } = slowStore()
    const { inbox, heard } = inboxOf(store)
    let acknowledged = false
    const taken = inbox.accept(entry).then(() => (acknowledged = true))
    await vi.advanceTimersByTimeAsync(1001)
    expect(heard).toEqual(['failing', 'entry 1'])
    expect(acknowledged).toBe(false)
    waiting[0]?.resolve()
    await taken
    expect(heard).toEqual(['failing', 'entry 1', 'storing'])
  })

  test('the axis never goes back, also over a restart with a clock that is behind', () => {
    const { inbox, clock } = inboxOf(createMemoryStore(), { seq: 7, at: start + 5000 })
    expect(inbox.now()).toBe(start + 5000)
    clock.moveTo(start + 6000)
    expect(inbox.now()).toBe(start + 6000)
  })
})
