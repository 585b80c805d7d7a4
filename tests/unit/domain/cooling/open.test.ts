import { describe, expect, it } from 'vitest'
import { judgeOpen } from '../../../../server/domain/cooling/open.ts'
import type { Cooling } from '../../../../server/domain/cooling/state.ts'
import { anyKiln, runSealed, tightKiln } from './sealed-kiln.ts'

// Limits: interior 40 to 50 °C before unloading (trade facts 7.3.1); open only at ambient (7.3.6); time alone is no proof (7.3.8).
describe('the opening of a sealed kiln', () => {
  it('is called after the hottest part fell below the limit, not when the wall did', () => {
    const run = runSealed(tightKiln, 40, 1)
    expect(run.below45H).not.toBeNull()
    expect(run.openH).toBeGreaterThanOrEqual(run.below45H ?? Infinity)
    expect(run.withdrawn).toBe(false)
  })

  it('waits for a night at least, however fast it cools', () => {
    // all else holds: so fast a fall is none that the odds were taught on
    const codes = (hours: number): string[] => {
      const { cooling, look, below45H } = runSealed({ ...tightKiln, tauH: 2 }, hours, 2)
      expect(below45H).toBeLessThan(8)
      return judgeOpen({ ...cooling, fitSince: 0, hotOdds: -9, hottestC: 40 }, look!, null, false).unless.map(({ code }) => code)
    }
    expect(codes(9.8)).toEqual(['sealed-for'])
    expect(codes(10)).toEqual([])
  })

  it('waits longer in doubt: without a probe of the air', () => {
    const sure = runSealed({ ...tightKiln, noiseK: 0 }, 40, 3)
    const unsure = runSealed({ ...tightKiln, noiseK: 0, ambientProbe: false }, 40, 3)
    expect(unsure.heldH).toBeGreaterThan(sure.heldH ?? Infinity)
    expect(unsure.cooling.doubts.map((d) => d.code)).toContain('no-air-probe')
  })

  it('is told with a doubt where the wall cools faster than tight drums do: its probe may be losing touch', () => {
    // 1 / (1/7.5 + 1/10) h: a drum of 7.5 h whose probe loses touch by a share 1/e every 10 h
    const doubts = (tauH: number): string[] => runSealed({ ...tightKiln, tauH }, 12, 5).cooling.doubts.map(({ code }) => code)
    expect(doubts(4.3)).toContain('wall-falls-fast')
    expect(doubts(6)).not.toContain('wall-falls-fast')
    expect(runSealed({ ...tightKiln, tauH: 4.3, noiseK: 0 }, 40, 3).heldH).toBeGreaterThan(
      runSealed({ ...tightKiln, noiseK: 0 }, 40, 3).heldH ?? Infinity,
    )
  })

  it('is never called while a leak keeps it burning, and the leak is told', () => {
    for (const leakK of [30, 60, 120, 300]) {
      const run = runSealed({ ...tightKiln, leakK }, 72, leakK)
      expect(run.openH, `leak of ${leakK} K`).toBeNull()
    }
    expect(runSealed({ ...tightKiln, leakK: 60 }, 72, 9).leakToldH).not.toBeNull()
  })

  it('is never false in 400 kilns, two fifths of them leaking', () => {
    const unsafe: number[] = []
    const lateH: number[] = []
    for (let seed = 1; seed <= 400; seed++) {
      const kiln = anyKiln(seed)
      const run = runSealed(kiln, 48, seed)
      if (run.openH === null) continue
      if (run.below50H === null || run.openH < run.below50H) unsafe.push(seed)
      if (run.below45H !== null) lateH.push(run.openH - run.below45H)
    }
    expect(unsafe).toEqual([])
    expect(lateH.length).toBeGreaterThan(100)
  })

  it('is never called hot where the wall probe touches badly from the start and shows a fifth to two fifths of it', () => {
    const hot: string[] = []
    let opened = 0
    for (const touches of [0.2, 0.3, 0.4])
      for (let seed = 1; seed <= 90; seed++) {
        const kiln = anyKiln(seed)
        const run = runSealed({ ...kiln, wallShare: touches * kiln.wallShare, leakK: 0 }, 48, seed)
        if (run.openH === null) continue
        opened++
        if (run.below50H === null || run.openH < run.below50H) hot.push(`${touches} of night ${seed}`)
      }
    expect(hot).toEqual([])
    expect(opened).toBeGreaterThan(30)
  })

  it.each([
    ['falls off', 1, 0],
    ['falls off in the night', 6, 0.05],
    ['hangs by a thread', 1, 0.4],
  ])('is never called once the wall probe %s, and says so', (_how, fromH, keeps) => {
    const run = runSealed({ ...tightKiln, off: { fromH, keeps } }, 60, 5)
    expect(run.openH).toBeNull()
    expect(run.cooling.doubts.map((d) => d.code)).toContain('wall-fell-off')
  })

  it('takes the limit of the kiln, not a fixed one', () => {
    const strict = runSealed({ ...tightKiln, limitC: 40 }, 60, 4)
    const loose = runSealed({ ...tightKiln, limitC: 50 }, 60, 4)
    expect(strict.openH).toBeGreaterThan(loose.openH ?? Infinity)
  })
})

describe('what keeps it shut', () => {
  const { cooling, look } = runSealed(tightKiln, 40, 1)
  const told = (change: Partial<Cooling>, modelUpperC: number | null = null, modelLeak = false) => {
    const { due, unless } = judgeOpen({ ...cooling, fitSince: 0, hotOdds: -9, ...change }, look!, modelUpperC, modelLeak)
    return { due, codes: unless.map(({ code }) => code) }
  }

  it('nothing, once all of it holds', () => {
    expect(told({})).toEqual({ due: true, codes: [] })
  })
  it('is named as what it is: never "no sign of air" where the model or the night speak of a fire', () => {
    expect(told({ hotOdds: 1 })).toEqual({ due: false, codes: ['may-burn-unseen'] })
    expect(told({}, null, true)).toEqual({ due: false, codes: ['model-says-leak'] })
    expect(told({ slow: [{ code: 'cools-slower' }], hotOdds: 1 }, null, true)).toEqual({ due: false, codes: ['cools-slower'] })
  })
  it('a fire that came back keeps it shut, also once the wall has fallen again', () => {
    expect(told({ rose: null, hasRelit: [{ code: 'wall-rose', value: 60, limit: 5 }] })).toEqual({ due: false, codes: ['wall-rose'] })
  })
  it('is told with one temperature of the hottest part, not with two that have different limits', () => {
    expect(told({ hottestC: 116 }, 158).codes).toEqual(['hottest-below'])
    expect(told({}, 158).codes).toEqual(['model-hottest'])
  })
})
