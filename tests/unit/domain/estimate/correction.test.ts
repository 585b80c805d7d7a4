import { describe, expect, test } from 'vitest'
import * as fc from 'fast-check'
import { classesNow, smokeNow } from '../../../../server/domain/estimate/correction.ts'
import { featureCount, featureNames } from '../../../../server/domain/estimate/features.ts'
import { emptyStanding, look } from '../../../../server/domain/estimate/standing.ts'
import { defaultSettings } from '../../../../server/domain/estimate/settings.ts'
import { without, withSmoke } from '../../../../server/domain/estimate/tables/correction.ts'

const features = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: featureCount, maxLength: featureCount })

describe('the tables of the correction', () => {
  test('have a number for each feature and a constant', () => {
    for (const table of [without, withSmoke]) {
      expect(table.mean).toHaveLength(featureNames.length)
      for (const form of [table.watery, table.tarry, ...table.smoke]) expect(form).toHaveLength(featureCount + 1)
    }
  })

  test('whatever the features, classes are probabilities and the range of the smoke is in order', () => {
    fc.assert(
      fc.property(features, (x) => {
        for (const table of [without, withSmoke]) {
          const c = classesNow(table, Float64Array.from(x))
          expect(c.good + c.watery + c.tarry).toBeCloseTo(1, 9)
          const [cool, , warm] = smokeNow(table, Float64Array.from(x))
          expect(warm).toBeGreaterThanOrEqual(cool)
        }
      }),
      { numRuns: 200 },
    )
  })

  test('more members over 14 % tar make tar-laden likelier', () => {
    for (const table of [without, withSmoke]) {
      const x = Float64Array.from(table.mean)
      const calm = classesNow(table, x).tarry
      x[0] = (x[0] ?? 0) + 2
      expect(classesNow(table, x).tarry).toBeGreaterThan(calm)
    }
  })
})

test('advice does not flicker: a few bad minutes stop nothing, twelve do', () => {
  const st = emptyStanding()
  for (let k = 0; k < 30; k++) look(st, defaultSettings, 3, false, 2, false)
  expect(st.start).toBe(true)
  for (let k = 0; k < 2; k++) look(st, defaultSettings, -4, false, 2, false)
  for (let k = 0; k < 10; k++) look(st, defaultSettings, 3, false, 2, false)
  expect(st.stop).toBe(false)
  for (let k = 0; k < 20; k++) look(st, defaultSettings, -4, false, 2, false)
  expect(st.stop).toBe(true)
})
