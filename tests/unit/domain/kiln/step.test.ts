import { describe, expect, test } from 'vitest'
import * as L from '../../../../server/domain/kiln/layout.ts'
import { at, dryKgAt, toPhysical, unknownCount, valuesLength } from '../../../../server/domain/kiln/parameters.ts'
import { load, step } from '../../../../server/domain/kiln/step.ts'
import { benchLength, type Books } from '../../../../server/domain/kiln/zone.ts'
import { emptyBooks, heatOf, massOf } from './books.ts'

const charge = { massKg: 75, moisturePct: 28, pieceMm: 60 }

interface Hour {
  smokeC: number
  wallC: number
  acid: number
  tar: number
  charKg: number
}

/** A whole firing with a steady fire of 620 °C and a cool condenser. */
function fire(
  latents: Partial<Record<keyof typeof at, number>>,
  hours: number,
  seconds: number,
): { x: Float64Array; p: Float64Array; books: Books; massBefore: number; heatBefore: number; hourly: Hour[] } {
  const z = new Float64Array(unknownCount)
  for (const [name, value] of Object.entries(latents)) z[at[name as keyof typeof at]] = value
  const p = new Float64Array(valuesLength)
  const x = new Float64Array(L.stateLength)
  toPhysical(z, 0, charge, p, 0)
  load(x, 0, p, 0, 20)
  const books = emptyBooks()
  const massBefore = massOf(x)
  const heatBefore = heatOf(x, p)
  const given = new Float64Array(benchLength)
  const hourly: Hour[] = []
  for (let t = 0; t < hours * 3600; t += seconds) {
    const fireC = Math.min(620, 20 + t / 2)
    step(x, 0, p, 0, { fireC, ambientC: 20, outletC: 30, hours: t / 3600, air: 1, seconds }, given, books)
    if ((t + seconds) % 3600 === 0) {
      const v = (k: number): number => x[k] ?? NaN
      const all = v(L.meanWater) + v(L.meanAcid) + v(L.meanTar)
      let charKg = 0
      for (let i = 0; i < L.zoneCount; i++) charKg += v(i * L.zoneStride + L.surfaceChar) + v(i * L.zoneStride + L.coreChar)
      hourly.push({ smokeC: v(L.smokeC), wallC: v(L.wallProbeC), acid: v(L.meanAcid) / all, tar: v(L.meanTar) / all, charKg })
    }
  }
  return { x, p, books, massBefore, heatBefore, hourly }
}

describe('nothing is lost or made', () => {
  for (const [name, latents] of Object.entries({
    median: {},
    quick: { draught: 1.5, piece: -1 },
    slow: { draught: -1.5, moisture: 1.5, piece: 1 },
    exothermic: { breakdownHeat: 2 },
  })) {
    for (const seconds of [10, 120]) {
      test(`mass and heat to 0.1 %, ${name} kiln in steps of ${seconds} s`, () => {
        const { x, p, books, massBefore, heatBefore } = fire(latents, 12, seconds)
        const out = books.waterOut + books.acidOut + books.tarOut + books.gasOut
        expect(Math.abs(massBefore + books.waterIn - massOf(x) - out) / (massBefore + books.waterIn)).toBeLessThan(0.001)
        const off = heatBefore + books.heatIn + books.heatMade - books.heatOut - books.heatLost - heatOf(x, p)
        expect(Math.abs(off) / books.heatIn).toBeLessThan(0.001)
      })
    }
  }
})

describe('a firing as published practice knows it', () => {
  const { hourly, p } = fire({}, 16, 60)

  test('the smoke stands for an hour or more between 55 and 90 °C while water leaves the cold end (trade facts 8.15, 1.3.5)', () => {
    const plateau = hourly.filter((h) => h.smokeC > 55 && h.smokeC < 90)
    expect(plateau.length).toBeGreaterThanOrEqual(2)
  })

  test('acids pass 3 % while the smoke is between 54 and 95 °C, tar 14 % between 110 and 213 (the job: best windows)', () => {
    const sour = hourly.find((h) => h.acid > 0.03)
    const dark = hourly.find((h) => h.tar > 0.14)
    expect(sour?.smokeC).toBeGreaterThan(50)
    expect(sour?.smokeC).toBeLessThan(95)
    expect(dark?.smokeC).toBeGreaterThan(110)
    expect(dark?.smokeC).toBeLessThan(230)
  })

  test('charcoal is 25 to 42 % of dry wood at the end (trade facts 3.1)', () => {
    const last = hourly[hourly.length - 1]
    const share = (last?.charKg ?? 0) / (p[dryKgAt] ?? NaN)
    expect(share).toBeGreaterThan(0.25)
    expect(share).toBeLessThan(0.42)
  })
})

test('a fire that dies before the wood breaks down gives no acid to speak of', () => {
  const p = new Float64Array(valuesLength)
  const x = new Float64Array(L.stateLength)
  toPhysical(new Float64Array(unknownCount), 0, charge, p, 0)
  load(x, 0, p, 0, 20)
  const given = new Float64Array(benchLength)
  for (let t = 0; t < 5 * 3600; t += 60) {
    const fireC = t < 3600 ? 20 + t / 6 : 40
    step(x, 0, p, 0, { fireC, ambientC: 20, outletC: 25, hours: t / 3600, air: 1, seconds: 60 }, given)
  }
  const all = (x[L.meanWater] ?? 0) + (x[L.meanAcid] ?? 0) + (x[L.meanTar] ?? 0)
  expect((x[L.meanAcid] ?? 1) / (all + 1e-12)).toBeLessThan(0.03)
})
