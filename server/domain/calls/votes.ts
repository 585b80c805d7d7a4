import type { Reason } from '../../contract/fold.ts'
import { mean, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { chargeMass, condenserLoadK, fireHolds, type Heat } from './heat.ts'

// Without a smoke probe no single sign is good enough: where the wall probe sits shifts it by 200 K (trade facts 1.3), the charge is
// weighed badly or not at all, the cloths are wet or dry. Several weak signs vote. Limits from simulated firings of a kiln model that
// is not ours, chosen where neighbouring settings earn the same; no published source.

/** Heat in per mass as loaded before acids are likely, K·h/kg. Early costs a little water, late costs vinegar. */
export const startHeatKhKg = 10
const startWarmC = 52 // wall or outlet: something arrives at the far end

/** The signs that acids come: a fire that held for its heat, and something warm at wall or outlet. */
export function startSigns(look: Look, heat: Heat): Reason[] | null {
  const { wetKg, assumed } = chargeMass(look.config, look.facts.charge)
  const dose = heat.sumKh / wetKg
  const warm = Math.max(mean(look.past.wall, 10) ?? 0, mean(look.past.smoke, 10) ?? mean(look.past.outlet, 10) ?? 0)
  if (dose < startHeatKhKg || warm < startWarmC || !fireHolds(look)) return null
  const because: Reason[] = [
    { code: 'heat-in', value: dose, limit: startHeatKhKg },
    { code: 'vapour-flows', value: warm, limit: startWarmC },
  ]
  if (assumed) because.push({ code: 'charge-assumed', value: wetKg })
  return because
}

export interface Votes {
  yes: Reason[]
  asked: number
}

/** Signs that tar has the upper hand; three of five carry it (two where fewer than four can be asked). */
export function stopVotes(look: Look, heat: Heat): Votes {
  const { wetKg, dryKg } = chargeMass(look.config, look.facts.charge)
  const lit = look.litAt ?? look.at
  const votes: Votes = { yes: [], asked: 0 }
  ask(votes, 'wall-over', mean(look.past.wall, 10), 230)
  if (heat.wall160At !== null) ask(votes, 'time-since-wall-160', (look.at - lit) / Math.max(1, heat.wall160At - lit), 1.4)
  else votes.asked++
  if (look.facts.stoppedFeedingAt === null) {
    ask(votes, 'heat-since-wall-100', heat.since100Kh / dryKg, 22)
    ask(votes, 'heat-in', heat.sumKh / wetKg, 35)
  }
  const load = condenserLoadK(heat, look)
  if (load !== null && heat.peakLoadK > 10 && heat.sumKh / wetKg > 15) askBelow(votes, 'condenser-load', load / heat.peakLoadK, 0.8)
  return votes
}

/** Signs that charring is done. */
export function charredVotes(look: Look, heat: Heat, sinceStopShare: number | null): Votes {
  const { wetKg, dryKg } = chargeMass(look.config, look.facts.charge)
  const votes: Votes = { yes: [], asked: 0 }
  if (sinceStopShare !== null) ask(votes, 'time-since-stop', sinceStopShare, 1.45)
  if (look.facts.stoppedFeedingAt === null) {
    ask(votes, 'heat-since-wall-100', heat.since100Kh / dryKg, 52)
    ask(votes, 'heat-in', heat.sumKh / wetKg, 58)
  }
  const rate = slope(look.past.wall, 60)
  if (rate !== null && (mean(look.past.wall, 10) ?? 0) > 200) askBelow(votes, 'wall-climbs', rate, 18)
  return votes
}

export function carried(votes: Votes): boolean {
  return votes.yes.length >= (votes.asked >= 4 ? 3 : 2)
}

function ask(votes: Votes, code: string, value: number | null, limit: number): void {
  if (value === null) return
  votes.asked++
  if (value >= limit) votes.yes.push({ code, value, limit })
}

function askBelow(votes: Votes, code: string, value: number, limit: number): void {
  votes.asked++
  if (value < limit) votes.yes.push({ code: `${code}-under`, value, limit })
}
