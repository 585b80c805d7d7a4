import { Chance } from '../../../server/simulator/chance.ts'
import { planWorld, type WorldPlan } from '../../../server/simulator/firing/plan.ts'

// Firings of one kiln: its drum, cover, pipe, probes and the person stay; charge, wood, weather, moisture of the ground, the day's fire and
// mishaps change. Kilns of another hand than domain/kiln, and no firing of these seeds taught or chose anything.

/** Mass and water that fire and draught are made for, by feel, as `planWorld` has it. */
const sizeOf = ({ bed }: WorldPlan): number => (bed.charge.dryKg / 57) * (0.7 + 0.6 * bed.charge.moistureDb)

/** The nth firing of a kiln, from 0. Every kiln has a smoke probe in its plan; whether it is used is another matter. */
export function planSame(kiln: string, nth: number): WorldPlan {
  const home = catching(kiln)
  const day = catching(`${kiln}/${nth}`)
  const chance = new Chance(`${kiln}/${nth}`).branch('same')
  const about = (value: number, share: number): number => value * Math.exp(share * chance.normal())
  const bed: WorldPlan['bed'] = {
    ...home.bed,
    charge: day.bed.charge,
    earthStartC: day.bed.earthStartC,
    yields: day.bed.yields,
    cover: { ...home.bed.cover, earthWmK: about(home.bed.cover.earthWmK, 0.12), earthKJm3K: about(home.bed.cover.earthKJm3K, 0.05) },
    gasToWoodKWK: about(home.bed.gasToWoodKWK, 0.1),
  }
  const { logsLooks, logsFuelAndCloths, ...habits } = home.hands
  const { openFrom, lost, leadS } = day.probes
  return {
    ...home,
    seed: `${kiln}/${nth}`,
    kind: day.kind,
    bed,
    fire: {
      ...home.fire,
      targetC: home.fire.targetC + 20 * chance.normal(),
      draughtKgS: about((home.fire.draughtKgS * sizeOf(day)) / sizeOf(home), 0.08),
    },
    air: day.air,
    hands: { ...day.hands, feedEveryMin: habits.feedEveryMin, wetEveryMin: habits.wetEveryMin, logsLooks, logsFuelAndCloths },
    probes: { ...home.probes, openFrom, lost, leadS, smoke: true },
    record: home.record === null ? null : day.record,
  }
}

/** A firing that never catches is scored 1 or -1 for reasons of its own, which no earlier firing knows of: it is left out. */
function catching(seed: string): WorldPlan {
  const plan = planWorld(new Chance(seed), seed)
  return plan.kind === 'never-catches' ? planWorld(new Chance(seed), seed, { kind: 'ordinary' }) : plan
}
