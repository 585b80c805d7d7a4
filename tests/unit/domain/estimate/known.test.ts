import { describe, expect, test } from 'vitest'
import { defaultKilnConfig } from '../../../../server/contract/kiln-defaults.ts'
import type { Prior } from '../../../../server/contract/learnt.ts'
import { ensemble } from '../../../../server/domain/estimate/ensemble.ts'
import { knownOf, priorOf } from '../../../../server/domain/estimate/known.ts'
import { memberCount } from '../../../../server/domain/estimate/size.ts'
import type { Evidence, GridReadings } from '../../../../server/domain/estimate/types.ts'
import { at, unknownCount } from '../../../../server/domain/kiln/parameters.ts'

const prior: Prior = { firings: 2, unknowns: { draught: { mean: 1.5, sd: 0.25 }, noSuchUnknown: { mean: 9, sd: 1 } } }
const readings = (minute: number): GridReadings => ({
  at: minute * 60_000,
  fireboxC: 300,
  wallC: 20 + minute,
  outletC: 22,
  smokeC: null,
  ambientC: 20,
  coreC: null,
  bottleKg: null,
})
const draughts = (latents: Float64Array): number[] =>
  Array.from({ length: memberCount }, (_, m) => latents[m * unknownCount + at.draught] as number)
const middle = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number
const lit = (config: { prior?: Prior }, ...evidence: Evidence[]) =>
  ensemble.step(ensemble.start({ ...defaultKilnConfig(), ...config }), readings(0), [...evidence, { at: 0, kind: 'lit' }])

describe('what is known of a kiln', () => {
  test('is where three members in four begin; the fourth knows nothing', () => {
    const first = draughts(lit({ prior }).members.latents)
    expect(middle(first.filter((_, m) => m % 4 !== 0))).toBeCloseTo(1.5, 0)
    expect(Math.abs(middle(first.filter((_, m) => m % 4 === 0)))).toBeLessThan(0.7)
    expect(Math.abs(middle(draughts(lit({}).members.latents)))).toBeLessThan(0.4)
  })

  test('counts also when it comes before lighting, and no more after it', () => {
    const told = lit({}, { at: 0, kind: 'known', prior })
    expect(told.members.latents).toEqual(lit({ prior }).members.latents)
    const late = ensemble.step(lit({}), readings(1), [{ at: 0, kind: 'known', prior }])
    expect(late.known).toBeNull()
  })

  test('makes the density a mixture of the learnt and the wide prior', () => {
    const known = knownOf(prior)
    const here = new Float64Array(unknownCount)
    here[at.draught] = 1.5
    // by hand: ln(0.75 / 0.25 + 0.25 * exp(-0.5 * 1.5 * 1.5)), all other unknowns in their middle
    expect(priorOf(here, 0, known)).toBeCloseTo(Math.log(3 + 0.25 * Math.exp(-1.125)), 9)
    here[at.draught] = -2
    // 14 spreads off: the wide prior alone, a quarter of it
    expect(priorOf(here, 0, known)).toBeCloseTo(Math.log(0.25) - 2, 9)
    expect(priorOf(here, 0, null)).toBe(-2)
  })

  test('is told once it is sealed, after three hours and with a wall that was heard: the kiln, not the charge', () => {
    const run = (minutes: number, wall: boolean) => {
      let state = lit({})
      for (let step = 6; step < minutes * 6; step++) {
        const now = readings(step / 6)
        state = ensemble.step(state, wall ? now : { ...now, wallC: null }, [])
      }
      expect(ensemble.lesson(state)).toBeNull()
      return ensemble.lesson(ensemble.step(state, readings(minutes), [{ at: 0, kind: 'sealed' }]))
    }
    const lesson = run(190, true)
    const names = Object.keys(lesson?.part === 'burn' ? lesson.unknowns : {})
    expect(names).toContain('probePlace')
    for (const ofTheDay of ['charge', 'moisture', 'piece']) expect(names).not.toContain(ofTheDay)
    expect(run(100, true)).toBeNull()
    expect(run(190, false)).toBeNull()
  })
})
