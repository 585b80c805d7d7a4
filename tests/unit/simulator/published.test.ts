import { describe, expect, it } from 'vitest'
import { Chance } from '../../../server/simulator/chance.ts'
import type { WorldPlan } from '../../../server/simulator/firing/plan.ts'
import { families, planWorld } from '../../../server/simulator/firing/plan.ts'
import type { Firing } from '../../../server/simulator/firing/world.ts'
import { burn, makeFiring } from '../../../server/simulator/firing/world.ts'

const gridS = 10
const middle = (xs: number[]) => [...xs].sort((a, b) => a - b)[Math.floor(xs.length / 2)] ?? NaN

/** Means over half an hour, so that a gust or a log on the fire does not count as a crossing. */
function slowly(c: readonly number[]): number[] {
  const sums = [0]
  for (const t of c) sums.push((sums.at(-1) ?? 0) + t)
  return c.map((_, i) => {
    const [from, to] = [Math.max(0, i - 90), Math.min(c.length, i + 90)]
    return ((sums[to] ?? NaN) - (sums[from] ?? NaN)) / (to - from)
  })
}

/** K/h of the smoke from the last time under 85 °C to the first over 150 °C; null when it never gets there. */
function climb({ course }: Firing): number | null {
  const burning = slowly(course.smoke.slice(0, course.sealedS / gridS))
  const from = burning.findLastIndex((t) => t < 85)
  const to = burning.findIndex((t, i) => i > from && t > 150)
  return to < 0 ? null : 65 / (((to - from) * gridS) / 3600)
}

describe.each(families)('kilns of the family %s against published figures', (family) => {
  const firings = Array.from({ length: 11 }, (_, n) => makeFiring(`published-${n}`, { family, kind: 'ordinary' }))
  const charred = firings.filter(({ truth }) => truth.sealDue !== null)

  it('mostly get through', () => {
    expect(charred.length).toBeGreaterThan(6)
  })

  it('warm their smoke 30 to 60 K an hour (trade facts 9.3, drum kilns; curve C: 31)', () => {
    const rates = firings.map(climb).filter((x) => x !== null)
    expect(rates.length).toBeGreaterThan(6)
    expect(middle(rates)).toBeGreaterThan(25)
    expect(middle(rates)).toBeLessThan(75)
  })

  it('stand for an hour or more with the smoke between 55 and 87 °C (trade facts 8.15, 1.2.4; the wet end not yet dry)', () => {
    const hours = firings.map(({ course }) => {
      const smoke = slowly(course.smoke.slice(0, course.sealedS / gridS))
      return (smoke.filter((t) => t >= 55 && t <= 87).length * gridS) / 3600
    })
    expect(middle(hours)).toBeGreaterThan(1)
    expect(Math.max(...hours)).toBeLessThan(14)
  })

  it('are hot in front while the smoke is still cool: 275 °C and more at 75 to 80 (trade facts 1.3.1)', () => {
    const hottest = charred.map(({ course }) => {
      const at = course.smoke.findIndex((t, i) => t > 77 && i > 360)
      return course.hottest[at] ?? 0
    })
    expect(middle(hottest)).toBeGreaterThan(275)
  })

  it('yield 20 to 42 % charcoal of dry wood (trade facts 3.1, 3.2)', () => {
    for (const { truth } of charred) {
      const share = truth.charcoalKg / truth.dryWoodKg
      expect(share).toBeGreaterThan(0.18)
      expect(share).toBeLessThan(0.42)
    }
    const share = middle(charred.map(({ truth }) => truth.charcoalKg / truth.dryWoodKg))
    expect(share).toBeGreaterThan(0.24)
    expect(share).toBeLessThan(0.35)
  })

  it('leave half of the energy of the wood in the charcoal (trade facts 8.8: 9500 of 19000 MJ; heat of charcoal 3.1.6: 30.7 MJ/kg)', () => {
    const share = middle(charred.map(({ truth }) => (truth.charcoalKg / truth.dryWoodKg) * 30.7)) / 19
    expect(share).toBeGreaterThan(0.38)
    expect(share).toBeLessThan(0.6)
  })

  it('give off 0 to 400 kJ per kg of dry wood in breaking down (trade facts 9.2.3: net 150 to 300 by 500 °C, 0 ± 100 before)', () => {
    const heats = charred.map(({ course, truth }) => course.bed.ledger.breakdownKJ / truth.dryWoodKg)
    for (const heat of heats) expect(heat).toBeGreaterThan(-50)
    for (const heat of heats) expect(heat).toBeLessThan(420)
    expect(middle(heats)).toBeGreaterThan(50)
    expect(middle(heats)).toBeLessThan(330)
  })

  it('have their best windows where published practice has them (trade facts 2: start about 60 to 90, stop 80 to 240)', () => {
    const windows = charred.filter(({ truth }) => truth.best.value > 2)
    const smokeAt = (f: Firing, s: number) => slowly(f.course.smoke.slice(0, f.course.sealedS / gridS))[Math.floor(s / gridS) - 1] ?? NaN
    const stop = middle(windows.map((f) => smokeAt(f, f.truth.best.to ?? NaN)))
    expect(stop).toBeGreaterThan(90)
    expect(stop).toBeLessThan(200)
    const start = middle(windows.map((f) => smokeAt(f, f.truth.best.from ?? NaN)))
    expect(start).toBeGreaterThan(40)
    expect(start).toBeLessThan(95)
  })

  it('cool 8 to 36 hours under their earth until no part is above 50 °C', () => {
    const hours = charred.map(({ truth }) => (truth.hottestBelow[50] === null ? 40 : (truth.hottestBelow[50] - truth.sealed) / 3600))
    expect(Math.min(...hours)).toBeGreaterThan(8)
    expect(middle(hours)).toBeLessThan(30)
  })
})

describe('what goes wrong, as planned', () => {
  it('a firing that never catches has no window worth having', () => {
    const { truth } = makeFiring('cold-1', { kind: 'never-catches' })
    expect(truth.best.value).toBeLessThan(2)
    expect(truth.sealDue).toBeNull()
  })

  it('air that leaks in after sealing keeps it hot', () => {
    const tight = planWorld(new Chance('leak'), 'leak', { family: 'zones', kind: 'ordinary' })
    const leaky = { ...tight, hands: { ...tight.hands, leakFromSealH: 1, leakKgS: 0.00015 } }
    const fifteenHoursOn = (plan: WorldPlan) => {
      const { course } = burn(plan)
      return course.hottest[Math.min(course.hottest.length - 1, course.sealedS / gridS + 15 * 360)] ?? NaN
    }
    expect(fifteenHoursOn(leaky)).toBeGreaterThan(fifteenHoursOn(tight) + 20)
  })

  it('the place of the wall probe shifts its reading by 100 K and more at the same moment (the-job.md, phases: up to 200)', () => {
    const plan = planWorld(new Chance('place'), 'place', { kind: 'ordinary' })
    const at = (wallPlace: number) => burn({ ...plan, probes: { ...plan.probes, wallPlace } }).course
    const front = at(0.15)
    const back = at(0.75)
    const apart = front.wall.slice(0, front.sealedS / gridS).map((t, i) => t - (back.wall[i] ?? NaN))
    expect(Math.max(...apart)).toBeGreaterThan(100)
  })
})

describe.each(families)('a charge of the family %s that is let run', (family) => {
  const firings = [4, 5, 6, 7].map((n) => makeFiring(`run-${n}`, { family, kind: 'let-run' }))

  it('is fed until it breaks down by itself, and then left with less air (trade facts 1.2.3, 2.15-2.17)', () => {
    for (const { course, truth } of firings) {
      const stopped = course.deeds.find(({ deed }) => deed === 'stop-feeding')
      expect(stopped).toBeDefined()
      expect(course.deeds.filter(({ deed, atS }) => deed === 'refuel' && atS > (stopped?.atS ?? 0))).toEqual([])
      expect(course.deeds.filter(({ deed }) => deed === 'air').map(({ mouth }) => mouth)).toContain('half')
      expect(truth.incidents.fireDying.every(([from]) => from < (stopped?.atS ?? 0))).toBe(true)
    }
  })

  it('goes on charring on its own heat, at the cost of charcoal, and no hotter than embers', () => {
    const went = firings.filter(({ course }) => {
      const stopped = course.deeds.find(({ deed }) => deed === 'stop-feeding')?.atS ?? 0
      return (
        (course.charred[Math.min(course.charred.length, course.sealedS / gridS) - 1] ?? 0) > (course.charred[stopped / gridS] ?? 1) + 0.5
      )
    })
    expect(went.length).toBeGreaterThanOrEqual(2)
    for (const { truth, course } of went) {
      expect(truth.charcoalKg / truth.dryWoodKg).toBeLessThan(0.33)
      expect(Math.max(...course.hottest)).toBeLessThan(1000)
    }
  })
})
