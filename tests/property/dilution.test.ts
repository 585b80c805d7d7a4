import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Ratio } from '../../server/contract/dilution.ts'
import { useIds } from '../../server/contract/dilution.ts'
import { asFold, asParts, checkedRatio, otherWay, readRatio } from '../../server/domain/dilution/convention.ts'
import { mix } from '../../server/domain/dilution/mix.ts'
import { touches } from '../../server/domain/dilution/tables/rates.ts'
import { densityAt } from '../../server/domain/lots/density.ts'
import { dryToWetBasis, wetToDryBasis } from '../../server/domain/yield/moisture.ts'
import { taken } from '../support/taken.ts'

const whole: fc.Arbitrary<Ratio> = fc.oneof(
  fc.integer({ min: 1, max: 99_999 }).map((water): Ratio => ({ convention: 'parts', water })),
  fc.integer({ min: 2, max: 100_000 }).map((fold): Ratio => ({ convention: 'fold', fold })),
)

describe('there and back', () => {
  it('either way of counting a ratio gives back the other, and the same liquid', () => {
    fc.assert(
      fc.property(whole, fc.integer({ min: 100, max: 1_000_000 }), (ratio, ml) => {
        expect(otherWay(otherWay(ratio))).toEqual(ratio)
        const one = taken(mix('compost', ratio, { ml, holds: 'finished' }))
        const other = taken(mix('compost', otherWay(ratio), { ml, holds: 'finished' }))
        expect(other.vinegarMl).toBe(one.vinegarMl)
        expect(other.waterMl).toBe(one.waterMl)
      }),
    )
  })

  it('what is written is what is read', () => {
    fc.assert(
      fc.property(whole, (ratio) => {
        const text = ratio.convention === 'parts' ? `1:${String(ratio.water)}` : `${String(ratio.fold)}-fold`
        expect(readRatio(text)).toEqual({ ok: true, value: ratio })
      }),
    )
  })

  it('wet and dry basis', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 90, noNaN: true }), (wet) => {
        expect(taken(dryToWetBasis(taken(wetToDryBasis(wet))))).toBeCloseTo(wet, 9)
      }),
    )
  })

  it('a density at one temperature and at another', () => {
    const temperature = fc.double({ min: 0, max: 40, noNaN: true })
    fc.assert(
      fc.property(fc.double({ min: 0.95, max: 1.1, noNaN: true }), temperature, temperature, (gPerMl, a, b) => {
        expect(densityAt({ gPerMl: densityAt({ gPerMl, atC: a }, b), atC: b }, a)).toBeCloseTo(gPerMl, 12)
      }),
    )
  })
})

describe('a mixture', () => {
  it('adds up, stands in the ratio asked, and is never too strong for a living plant', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...useIds),
        whole,
        fc.integer({ min: 100, max: 10_000_000 }),
        fc.constantFrom('water' as const, 'finished' as const),
        (use, ratio, ml, holds) => {
          const mixture = mix(use, ratio, { ml, holds })
          if (touches[use] === 'animals') expect(mixture.ok).toBe(false)
          if (!mixture.ok) return
          const { vinegarMl, waterMl, totalMl } = mixture.value
          expect(waterMl / vinegarMl).toBeCloseTo(asParts(ratio), 6)
          expect(totalMl / vinegarMl).toBeCloseTo(asFold(ratio), 6)
          expect(holds === 'water' ? waterMl : totalMl).toBeCloseTo(ml, 6)
          if (touches[use] === 'living-plants') expect(mixture.value.fold).toBeGreaterThanOrEqual(100)
        },
      ),
    )
  })

  it('any text at all is read or refused, never thrown at the person', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const read = readRatio(text)
        expect(read.ok ? checkedRatio(read.value).ok : read.problems.length > 0).toBe(true)
      }),
    )
  })
})
