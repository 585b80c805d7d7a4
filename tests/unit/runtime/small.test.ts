import { describe, expect, test } from 'vitest'
import type { AlarmView } from '../../../server/contract/live.ts'
import type { Output } from '../../../server/contract/fold.ts'
import { standingAlarm } from '../../../server/mqtt/voice.ts'
import { systemClock } from '../../../server/runtime/clock.ts'
import { SteppedClock } from '../../../server/runtime/stepped-clock.ts'
import { lets, startPace } from '../../../server/runtime/throttle.ts'
import { Watch } from '../../../server/runtime/watch.ts'

describe('the clock of the house', () => {
  const year = Date.UTC(2026, 0, 1)

  const times = (wall: number) => {
    const host = { wallMs: wall, monotonicMs: 500, uptimeMs: 90_000 }
    return { host, times: { wall: () => host.wallMs, monotonic: () => host.monotonicMs, uptime: () => host.uptimeMs } }
  }

  test('follows a monotonic counter, whatever the host does to its own time', () => {
    const { host, times: from } = times(year)
    const clock = systemClock(0, from)
    expect(clock.now()).toBe(year)
    host.monotonicMs += 1000.7
    host.uptimeMs += 1000
    host.wallMs -= 3_600_000
    expect(clock.now()).toBe(year + 1000)
    expect(clock.sure()).toBe(false)
    clock.catchUp()
    expect(clock.now()).toBe(year + 1000)
  })

  test('begins where the journal ended when the host is behind, says that it is not sure, and catches up when the host learns the time', () => {
    const { host, times: from } = times(1000)
    const clock = systemClock(year, from)
    expect(clock.now()).toBe(year)
    expect(clock.sure()).toBe(false)
    host.wallMs = year + 86_400_000
    clock.catchUp()
    expect(clock.now()).toBe(year + 86_400_000)
    expect(clock.sure()).toBe(true)
  })

  test('counts the time that the host slept', () => {
    const { host, times: from } = times(year)
    const clock = systemClock(0, from)
    host.uptimeMs += 3_600_000 + 1000
    host.monotonicMs += 1000
    expect(clock.now()).toBe(year + 3_601_000)
    host.uptimeMs += 500
    host.monotonicMs += 500
    expect(clock.now()).toBe(year + 3_601_500)
  })
})

test('a stepped clock runs what is due in order, each at its own time, also what was added on the way', () => {
  const clock = new SteppedClock(0)
  const ran: [string, number][] = []
  clock.at(20, () => ran.push(['b', clock.now()]))
  clock.at(10, () => {
    ran.push(['a', clock.now()])
    clock.at(15, () => ran.push(['c', clock.now()]))
  })
  clock.at(30, () => ran.push(['late', clock.now()]))()
  clock.moveTo(40)
  expect(ran).toEqual([
    ['a', 10],
    ['c', 15],
    ['b', 20],
  ])
  clock.moveTo(5)
  expect(clock.now()).toBe(40)
})

// wire format: estimates at most once a minute, forecasts about every five minutes and whenever a call changes
test('estimates and forecasts come at a readable pace', () => {
  const pace = startPace()
  const base = { cause: 1, n: 0 }
  const estimate = (at: number) => lets(pace, { ...base, at, kind: 'estimate', estimate: {} as never })
  const forecast = (at: number): boolean =>
    lets(pace, { ...base, at, kind: 'forecast', call: 'seal', earliest: 0, likely: 0, latest: 0 } as Output)
  expect([0, 10_000, 59_999, 60_000, 110_000, 120_000].map(estimate)).toEqual([true, false, false, true, false, true])
  expect([0, 100_000, 300_000].map(forecast)).toEqual([true, false, true])
  lets(pace, { ...base, at: 310_000, kind: 'call', call: 'open', state: 'due', because: [] })
  expect(forecast(320_000)).toBe(true)
})

describe('who watches', () => {
  const [tablet, phone] = [{}, {}]
  /** Looks once a second until `to`; beats come every 2 s and are answered as `says` tells: true seen, false hidden, null not at all. */
  const missed = (to: number, pages: { page: object; says: (s: number) => boolean | null }[], leaves?: { page: object; s: number }) => {
    const watch = new Watch(0)
    for (let s = 1; s <= to; s++) {
      for (const { page, says } of pages) {
        const visible = s % 2 === 0 ? says(s) : null
        if (visible !== null) watch.echo(page, s * 1000, visible)
      }
      if (leaves?.s === s) watch.leave(leaves.page)
      watch.look(s * 1000)
      if (watch.unwatched()) return s
    }
    return null
  }
  const until = (s: number) => (now: number) => (now <= s ? true : null)

  test('a page that stops is known within 15 s (reliability 11.5), however long it watched before', () => {
    expect(missed(600, [{ page: tablet, says: until(10) }])).toBe(24)
    expect(missed(600, [{ page: tablet, says: until(300) }])).toBe(314)
    // hidden at its last word, as a tablet that falls asleep
    expect(missed(600, [{ page: tablet, says: (s) => (s <= 298 ? true : s === 300 ? false : null) }])).toBe(314)
  })

  test('a gap of ten seconds and a slow page raise nothing', () => {
    expect(missed(600, [{ page: tablet, says: (s) => (s % 100 < 10 ? null : true) }])).toBeNull()
    expect(missed(600, [{ page: tablet, says: (s) => (s % 12 === 0 ? true : null) }])).toBeNull()
  })

  test('a page that answers and is hidden has a minute, as the one that was closed in order (field-ui 1.8); so has the beginning', () => {
    expect(missed(600, [{ page: tablet, says: (s) => s <= 100 }])).toBe(161)
    expect(missed(600, [{ page: tablet, says: until(100) }], { page: tablet, s: 101 })).toBe(161)
    expect(missed(600, [])).toBe(61)
    expect(missed(600, [{ page: tablet, says: () => false }])).toBe(61)
  })

  test('one page that is seen is enough; one that was closed excuses none that stops', () => {
    expect(
      missed(
        600,
        [tablet, phone].map((page) => ({ page, says: page === phone ? () => true : until(20) })),
      ),
    ).toBeNull()
    const both = [
      { page: phone, says: until(100) },
      { page: tablet, says: until(110) },
    ]
    expect(missed(600, both, { page: phone, s: 101 })).toBe(124)
  })

  test('while the service itself stood still nobody was missed', () => {
    const watch = new Watch(0)
    watch.echo(tablet, 1000, true)
    const missed = (now: number) => {
      watch.look(now)
      return watch.unwatched()
    }
    expect([1000, 2000, 40_000, 50_000].map(missed)).toEqual([false, false, false, false])
    expect(Array.from({ length: 14 }, (_, s) => missed(51_000 + s * 1000)).indexOf(true)).toBe(12)
  })
})

test('the buzzer plays the most urgent that nobody has acknowledged, then the most urgent that stands in silence', () => {
  const alarm = (code: AlarmView['alarm'], state: AlarmView['state'], priority: AlarmView['priority'], since = 0): AlarmView => ({
    alarm: code,
    state,
    priority,
    since,
    firstOut: false,
    because: [],
    shelvedUntil: null,
  })
  const hot = alarm('condenser-hot', 'acknowledged', 'urgent')
  const warm = alarm('condenser-warm', 'unacknowledged', 'warning', 5)
  const older = alarm('fire-dying', 'unacknowledged', 'warning', 2)
  const shelved = alarm('co-high', 'shelved', 'urgent')
  expect(standingAlarm([hot, warm, older, shelved])).toEqual({ alarm: older, silenced: false })
  expect(standingAlarm([hot, shelved])).toEqual({ alarm: hot, silenced: true })
  expect(standingAlarm([shelved])).toEqual({ alarm: null, silenced: true })
})
