import { describe, expect, test } from 'vitest'
import { planSame } from '../../../bench/study/same-kiln.ts'

describe('firings of the same kiln', () => {
  const [first, second] = [planSame('same-7', 0), planSame('same-7', 1)]

  test('share drum, pipe, probes and person', () => {
    expect(second.family).toBe(first.family)
    expect(second.scheme).toBe(first.scheme)
    expect(second.pipe).toEqual(first.pipe)
    const { openFrom: _a, lost: _b, leadS: _c, ...probes } = first.probes
    expect(second.probes).toMatchObject(probes)
    for (const name of ['gasToWallWm2K', 'woodToWallWm2K', 'bypass'] as const) expect(second.bed[name]).toBe(first.bed[name])
    expect(second.hands.feedEveryMin).toBe(first.hands.feedEveryMin)
  })

  test('differ in charge, wood and weather, and in what chance makes of them', () => {
    expect(second.seed).not.toBe(first.seed)
    for (const name of ['charge', 'yields'] as const) expect(second.bed[name]).not.toEqual(first.bed[name])
    expect(second.air).not.toEqual(first.air)
    expect(second.fire.targetC).not.toBe(first.fire.targetC)
    expect(planSame('same-8', 0).probes.wallPlace).not.toBe(first.probes.wallPlace)
  })

  test('are fired for the size of their charge, and are the same every time', () => {
    for (let nth = 0; nth < 20; nth++) {
      const { fire, bed, kind } = planSame('same-7', nth)
      const size = (bed.charge.dryKg / 57) * (0.7 + 0.6 * bed.charge.moistureDb)
      const firstSize = (first.bed.charge.dryKg / 57) * (0.7 + 0.6 * first.bed.charge.moistureDb)
      // eight in a hundred from day to day, and the same for the first: never half or double
      expect(Math.abs(Math.log(fire.draughtKgS / size / (first.fire.draughtKgS / firstSize)))).toBeLessThan(0.5)
      expect(kind).not.toBe('never-catches')
    }
    expect(planSame('same-7', 1)).toEqual(second)
  })
})
