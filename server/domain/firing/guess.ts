import type { Estimate, InsideSlice } from '../../contract/fold.ts'
import type { Phase } from '../../contract/vocabulary.ts'
import { mean } from './history.ts'
import { litAtOf, type KilnState } from './state.ts'

/** How far three fronts have come from the mouth to the chimney, 0 to 1: dry, breaking down, charred. A picture, not a measurement. */
const fronts: Record<Phase, readonly [dry: number, breaking: number, charred: number]> = {
  idle: [0, 0, 0],
  kindling: [0.1, 0, 0],
  drying: [0.45, 0.15, 0],
  breakdown: [0.7, 0.4, 0.1],
  vinegar: [0.9, 0.65, 0.3],
  tar: [1, 0.9, 0.65],
  clearing: [1, 1, 0.9],
  cooling: [1, 1, 1],
  cold: [1, 1, 1],
  failed: [0.3, 0.05, 0],
}
const slices = 8
const blur = 0.25

/** Where no model runs: what the wood may look like in this phase, marked as coming from the phase only. Null before lighting. */
export function guessEstimate(state: KilnState): Estimate | null {
  if (litAtOf(state) === null) return null
  const { phase } = state.phase
  const [dry, breaking, charred] = fronts[phase]
  const inside = Array.from({ length: slices }, (_, i): InsideSlice => {
    const place = (i + 0.5) / slices
    const past = (front: number): number => Math.min(1, Math.max(0, (front - place) / blur + 0.5))
    const c = past(charred)
    const b = Math.max(c, past(breaking))
    const d = Math.max(b, past(dry))
    return [1 - d, d - b, b - c, c]
  })
  const smoke = mean(state.past.smoke, 5)
  const collecting = phase === 'vinegar'
  return {
    smokeC: smoke ?? 30 + 60 * dry + 60 * breaking + 180 * charred,
    smokeSd: smoke === null ? 35 : 3,
    acidShare: collecting ? 0.08 : phase === 'tar' || phase === 'clearing' ? 0.06 : 0.01,
    acidSd: 0.05,
    tarShare: phase === 'tar' || phase === 'clearing' ? 0.2 : collecting ? 0.06 : 0.01,
    tarSd: 0.06,
    condensateKgH: phase === 'drying' || phase === 'breakdown' || collecting ? 4 : phase === 'tar' ? 2.5 : 0,
    condensateKg: 0,
    charShare: charred,
    charSd: 0.2,
    inside,
    from: 'phase',
  }
}
