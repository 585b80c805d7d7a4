import { Chance } from '../chance.ts'
import type { WorldPlan } from '../firing/plan.ts'
import { planWorld } from '../firing/plan.ts'

/** Chosen by eye among many for a clear run of all phases. */
const demoSeed = 'demo-61'

/** An ordinary firing of an invented kiln, with all that a page can show: smoke probe, logged fuel and cloths, one stretch of forgotten cloths. */
export function demoPlan(seed = demoSeed): WorldPlan {
  const plan = planWorld(new Chance(seed), seed, { family: 'zones', kind: 'ordinary' })
  return {
    ...plan,
    bed: { ...plan.bed, cover: { ...plan.bed.cover, layersM: [0.012, 0.02, 0.03, 0.015] } },
    pipe: { ...plan.pipe, clothKg: 1.6, wetKWK: 0.12 },
    hands: {
      ...plan.hands,
      wetFromH: 0.9,
      wetEveryMin: 9,
      neglectCloths: [3.3, 3.95],
      logsFuelAndCloths: true,
      logsLooks: true,
      sealAfterDueMin: 9,
    },
    probes: {
      ...plan.probes,
      smoke: true,
      ambient: true,
      core: false,
      converter: 'max31855',
      outletChip: 'ds18b20',
      lsb: 0.25,
      clock: 'ntp',
      spikes: 0,
      openFrom: null,
      lost: null,
      leadS: 900,
    },
  }
}
