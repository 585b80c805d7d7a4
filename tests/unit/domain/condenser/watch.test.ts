import { describe, expect, it } from 'vitest'
import { defaultLimits } from '../../../../server/contract/fold.ts'
import { isFarOver, isForgotten, startCondenser, stepCondenser, type CondenserWatch } from '../../../../server/domain/condenser/watch.ts'
import { emptyHistory, write } from '../../../../server/domain/firing/history.ts'
import type { Look } from '../../../../server/domain/firing/look.ts'

const minute = 60_000
const lit = Date.UTC(2026, 2, 1, 6)

/** Minutes of outlet after an hour at 45 °C, in which the load has settled: wet cloths reach 45, dry ones are over 56. */
function watched(outlet: readonly number[], wettings: readonly number[] = []): { watch: CondenserWatch; look: Look } {
  const past = { outlet: emptyHistory(), smoke: emptyHistory(), firebox: emptyHistory() }
  const watch = startCondenser()
  let look = null as unknown as Look
  for (const [n, value] of [...Array<number>(60).fill(45), ...outlet].entries()) {
    const at = lit + (n + 1) * minute
    write(past.outlet, at - 1, value)
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
  it('sooner for who wets in time, later for who lets them dry each time, never later than ten minutes', () => {
    expect([at(5.9, 30, [1, 1, 1]), at(6, 30, [1, 1, 1])]).toEqual([false, true])
    expect([at(8.9, 30, [6, 6, 6]), at(9, 30, [6, 6, 6])]).toEqual([false, true])
    expect([at(9.9, 30, [14, 14, 14]), at(10, 30, [14, 14, 14])]).toEqual([false, true])
  })
  it('by nine minutes where the habit is not known, and by fourteen where no wetting was seen', () => {
    expect([at(8.9, 30, [1, 1]), at(9, 30, [1, 1])]).toEqual([false, true])
    expect([at(13.9, null, []), at(14, null, [])]).toEqual([false, true])
  })
  it('by twelve in a lull: for longer than a cycle no cloth had dried', () => {
    expect([at(11.9, 41, [1, 1, 1]), at(12, 41, [1, 1, 1])]).toEqual([false, true])
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
