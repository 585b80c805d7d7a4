import { describe, expect, it } from 'vitest'
import { defaultLimits } from '../../../../server/contract/fold.ts'
import {
  isFarOver,
  isForgotten,
  minutesUntilDry,
  startCondenser,
  stepCondenser,
  type CondenserWatch,
} from '../../../../server/domain/condenser/watch.ts'
import { emptyHistory, write } from '../../../../server/domain/firing/history.ts'
import type { Look } from '../../../../server/domain/firing/look.ts'

const minute = 60_000
const lit = Date.UTC(2026, 2, 1, 6)

/** Minutes of outlet after an hour at 45 °C, in which the load has settled: wet cloths reach 45, dry ones are over 56. */
function watched(
  outlet: readonly number[],
  wettings: readonly number[] = [],
  smokeC: ((minute: number) => number) | null = null,
): { watch: CondenserWatch; look: Look } {
  const past = { outlet: emptyHistory(), smoke: emptyHistory(), firebox: emptyHistory() }
  const watch = startCondenser()
  let look = null as unknown as Look
  for (const [n, value] of [...Array<number>(60).fill(45), ...outlet].entries()) {
    const at = lit + (n + 1) * minute
    write(past.outlet, at - 1, value)
    if (smokeC !== null) write(past.smoke, at - 1, smokeC(n))
    const logged = wettings.filter((m) => m <= n - 60).map((m) => lit + (m + 61) * minute)
    look = { at, past, facts: { wettings: logged, stoppedFeedingAt: null }, config: { limits: defaultLimits } } as unknown as Look
    stepCondenser(watch, look)
  }
  return { watch, look }
}
const times = (n: number, value: number): number[] => Array<number>(n).fill(value)

describe('dryness', () => {
  it('counts the minutes clear of the limit, and takes back those under it', () => {
    expect(watched(times(6, 62)).watch.dryness).toBeGreaterThan(4)
    expect(watched([...times(6, 62), ...times(3, 55)]).watch.dryness).toBeLessThan(watched(times(6, 62)).watch.dryness)
  })
  it('gains nothing while the outlet comes down by itself, though it is still over the limit', () => {
    const down = [78, 76.5, 75, 73.5, 72, 70.5, 69, 67.5, 66]
    const before = watched([...times(5, 78)]).watch.dryness
    expect(watched([...times(5, 78), ...down]).watch.dryness - before).toBeLessThan(4)
  })
  it('a spell goes on through a dip of some kelvin', () => {
    expect(watched([...times(6, 62), ...times(3, 54), 62]).watch.dryMin).toBeGreaterThan(7)
    expect(watched([...times(6, 62), ...times(3, 50), 62]).watch.dryMin).toBeLessThan(3)
  })
})

describe('when the cloths are to be wetted', () => {
  const climbing = (fromC: number): { watch: CondenserWatch; look: Look } =>
    watched([...times(40, fromC), ...Array.from({ length: 12 }, (_, k) => fromC + 0.8 * (k + 1))])
  it('is told from how the outlet climbs towards eight kelvin over what wet ones reach', () => {
    const { watch, look } = climbing(45)
    // 45 + 9.6 at 0.8 K a minute has just passed 53
    expect(minutesUntilDry(watch, look)).toBe(0)
  })
  it('is not now while the pipe is cool, however far it stands over what wet ones reach', () => {
    const { watch, look } = climbing(15)
    expect(watch.wetC).toBeLessThan(16)
    expect(minutesUntilDry(watch, look)).toBeGreaterThan(8)
  })
})

describe('a wetting', () => {
  const dryAndWetted = [...times(8, 64), 56, 48, 45, 45, 45]
  it('is seen in the outlet, and what was let dry before it is remembered', () => {
    const { watch } = watched(dryAndWetted)
    expect(watch.seenWettedAt).not.toBeNull()
    expect(watch.dryness).toBe(0)
    expect(watch.letDry).toHaveLength(1)
    expect(watch.letDry[0]).toBeGreaterThan(4)
  })
  it('of cloths that had not dried says nothing of the habit', () => {
    expect(watched([...dryAndWetted, ...times(10, 45)], [18, 25]).watch.letDry).toHaveLength(1)
  })
  it('is none where the fall ends over the limit, nor when it later drifts under it', () => {
    const { watch } = watched([...times(6, 64), 80, 100, 110, 92, 74, 64, ...times(10, 64), ...[62, 60, 58, 56, 55, 54, 53, 52, 51]])
    expect(watch.seenWettedAt).toBeNull()
    expect(watch.wettedAt).toBeNull()
  })
})

describe('what wet cloths reach', () => {
  /** From the first vapour on: half an hour, in which the outlet shows one wetting, at minute 5. */
  const young = (wettings: readonly number[]): CondenserWatch => {
    const past = { outlet: emptyHistory(), smoke: emptyHistory(), firebox: emptyHistory() }
    const watch = startCondenser()
    for (let n = 0; n < 30; n++) {
      const at = lit + (n + 1) * minute
      write(past.outlet, at - 1, n >= 5 && n < 10 ? 41 : 60)
      const facts = { wettings: wettings.filter((m) => m <= n).map((m) => lit + (m + 1) * minute), stoppedFeedingAt: null }
      stepCondenser(watch, { at, past, facts, config: { limits: defaultLimits } } as unknown as Look)
    }
    return watch
  }
  it('is shown by two wettings, seen or logged, before the load has settled, and by one not yet', () => {
    expect(young([15]).wetC).toBe(41)
    expect(young([]).wetC).toBeNull()
  })
})

describe('cloths that give way', () => {
  // three times: wet for twenty minutes, dry for six, wetted
  const cycles = [1, 2, 3].flatMap(() => [...times(20, 45), 52, ...times(5, 64), 50])
  const again = (wetMin: number, smokeK = 0) => {
    const outlet = [...cycles, ...times(wetMin, 45), 52, ...times(7, 64)]
    return watched(outlet, [], (n) => 150 + (n < 60 + cycles.length + wetMin - 1 ? 0 : smokeK))
  }
  it('much sooner than after the wettings before are told as soon as they are surely dry: the water did not soak them', () => {
    const { watch, look } = again(6)
    expect(watch.holding.lastsMin).toEqual([23, 23, 9])
    expect(watch.holding.isShort).toBe(true)
    expect(watch.dryness).toBeLessThan(9)
    expect(isForgotten(watch, look)).toBe(true)
  })
  it('when they usually do, or under more smoke, are not: the habit decides', () => {
    for (const { watch, look } of [again(20), again(6, 30)]) {
      expect(watch.holding.gaveWay).toBe(true)
      expect(watch.holding.isShort).toBe(false)
      expect(isForgotten(watch, look)).toBe(false)
    }
  })
  it('explain half an hour, and nothing that dries later', () => {
    const { watch, look } = again(6)
    expect(isForgotten({ ...watch, dryness: 5.9, wettedAt: look.at - 31 * minute }, look)).toBe(false)
  })
  it('are looked at anew after the next wetting', () => {
    const { watch } = watched([...cycles, ...times(6, 45), 52, ...times(7, 64), 45, 45])
    expect(watch.holding).toMatchObject({ isShort: false, gaveWay: false })
  })
})

describe('whether a logged wetting worked', () => {
  const helped = (outlet: readonly number[]): boolean | null => watched(outlet, [8]).watch.helped
  it('is asked seven minutes later: not known before, no where the outlet stands as it did, yes where it fell', () => {
    expect(helped(times(14, 64))).toBeNull()
    expect(helped(times(20, 64))).toBe(false)
    expect(helped([...times(9, 64), ...times(11, 57)])).toBe(true)
  })
  it('is yes where there was nothing to cool', () => expect(helped(times(20, 46))).toBe(true))
})

describe('what passes by itself', () => {
  it('an outlet that races, faster and faster, is a wave for now', () => {
    // three kelvin in two minutes, then twenty
    expect(watched([46, 47, 48, 57, 68, 80]).watch.passing).toBe(true)
    expect(watched([50, 55, 60, 65, 68, 70]).watch.passing).toBe(false)
  })
})

describe('cloths count as forgotten', () => {
  const { watch, look } = watched([])
  const at = (dryness: number, wettedMinAgo: number | null, letDry: number[]): boolean =>
    isForgotten({ ...watch, dryness, letDry, wettedAt: wettedMinAgo === null ? null : look.at - wettedMinAgo * minute }, look)
  it('sooner for who wets in time, later for who lets them dry each time, never later than fourteen minutes', () => {
    expect([at(5.9, 30, [1, 1, 1]), at(6, 30, [1, 1, 1])]).toEqual([false, true])
    expect([at(8.9, 30, [6, 6, 6]), at(9, 30, [6, 6, 6])]).toEqual([false, true])
    expect([at(13.9, 30, [14, 14, 14]), at(14, 30, [14, 14, 14])]).toEqual([false, true])
  })
  it('by nine minutes where the habit is not known, and by fourteen where no wetting was seen', () => {
    expect([at(8.9, 30, [1, 1]), at(9, 30, [1, 1])]).toEqual([false, true])
    expect([at(13.9, null, []), at(14, null, [])]).toEqual([false, true])
  })
  it('by twelve in a lull: for longer than a cycle no cloth had dried', () => {
    expect([at(11.9, 41, [1, 1, 1]), at(12, 41, [1, 1, 1])]).toEqual([false, true])
  })
  it('three minutes later while more and more smoke comes: a load that grows lifts the outlet too', () => {
    const under = (smokeK: number) => watched(times(20, 45), [], (n) => 150 + (n < 70 ? 0 : smokeK))
    const forgotten = (dryness: number, { watch, look }: { watch: CondenserWatch; look: Look }): boolean =>
      isForgotten({ ...watch, dryness, letDry: [1, 1, 1], wettedAt: look.at - 30 * minute }, look)
    expect([6, 8.9, 9].map((dryness) => forgotten(dryness, under(40)))).toEqual([false, false, true])
    expect(forgotten(6, under(20))).toBe(true)
  })
  it('not before the next wetting could come', () => expect([at(12, 14, [1, 1, 1]), at(12, 15, [1, 1, 1])]).toEqual([false, true]))
  it('at once where the outlet has stood far over the limit for eight minutes', () => {
    const far = watched([60, 75, ...times(9, 95)])
    expect(isFarOver(far.watch)).toBe(true)
    expect(isForgotten({ ...far.watch, wettedAt: far.look.at - minute }, far.look)).toBe(true)
    expect(isFarOver(watched([60, 75, ...times(7, 95)]).watch)).toBe(false)
    expect(isFarOver(watched([60, 75, ...times(9, 84)]).watch)).toBe(false)
  })
})
