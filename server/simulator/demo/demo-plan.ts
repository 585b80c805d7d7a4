import { Chance } from '../chance.ts'
import type { WorldPlan } from '../firing/plan.ts'
import { planWorld } from '../firing/plan.ts'

/** Chosen by eye among many for a clear run of all phases. */
const demoSeed = 'demo-61'

/** An ordinary firing of an invented kiln, sealed at `sealS` or when nobody called for it any more, with all that a page can show: smoke probe, logged fuel and cloths, one stretch of forgotten cloths. */
export function demoPlan(sealS: number | null, seed = demoSeed): WorldPlan {
  const plan = planWorld(new Chance(seed), seed, { family: 'zones', kind: 'ordinary' })
  return {
    ...plan,
    // long enough for the call to open, which waits longer than the kiln does
    coldC: 24,
    bed: { ...plan.bed, cover: { ...plan.bed.cover, layersM: [0.012, 0.02, 0.03, 0.015] } },
    pipe: { ...plan.pipe, clothKg: 1.6, wetKWK: 0.12 },
    hands: {
      ...plan.hands,
      wetFromH: 0.9,
      wetEveryMin: 9,
      neglectCloths: [3.3, 3.95],
      logsFuelAndCloths: true,
      logsLooks: true,
      // sealed when it is called, never by the simulator's own knowledge
      sealAfterDueMin: Infinity,
      sealAtLatestH: sealS === null ? 20 : sealS / 3600,
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
