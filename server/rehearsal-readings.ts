import type { RehearsalScene } from './contract/setup.ts'
import type { AlarmCode } from './contract/vocabulary.ts'

interface Mishap {
  expected: readonly AlarmCode[]
  /** When it happens, minutes after lighting. */
  atMin: number
  /** How long the rules may take, minutes of the kiln's time. */
  withinMin: number
}

/** Mishaps that are rehearsed. The times are those of a made-up firing (common practice, no source). */
export const mishaps: Readonly<Record<RehearsalScene, Mishap>> = {
  probe: { expected: ['probe-fault'], atMin: 40, withinMin: 5 },
  condenser: { expected: ['condenser-warm', 'condenser-hot'], atMin: 240, withinMin: 45 },
  fire: { expected: ['fire-dying', 'fire-out'], atMin: 120, withinMin: 60 },
  service: { expected: [], atMin: 0, withinMin: 0 },
}

type Knot = readonly [minute: number, c: number]

/** An ordinary made-up firing: what each probe reads by minutes after lighting, °C. */
const ordinary: Readonly<Record<'firebox' | 'wall' | 'outlet', readonly Knot[]>> = {
  firebox: [
    [0, 20],
    [15, 600],
    [540, 620],
  ],
  wall: [
    [0, 20],
    [60, 60],
    [140, 80],
    [200, 120],
    [300, 220],
  ],
  outlet: [
    [0, 20],
    [40, 45],
    [150, 48],
    [300, 48],
  ],
}

/** The records of a pack at that minute, with the mishap in them. */
export function readingsAt(scene: RehearsalScene, minute: number): ({ n: string; v: number } | { n: string; vs: string })[] {
  const since = minute - mishaps[scene].atMin
  const happened = since >= 0
  const firebox = between(ordinary.firebox, minute) - (scene === 'fire' && happened ? Math.min(520, since * 8) : 0)
  const outlet = between(ordinary.outlet, minute) + (scene === 'condenser' && happened ? Math.min(40, since * 2) : 0)
  const wall =
    scene === 'probe' && happened ? { n: 'wall', vs: 'fault:open' } : { n: 'wall', v: step(between(ordinary.wall, minute), minute, 1) }
  return [{ n: 'firebox', v: step(firebox, minute, 3) }, wall, { n: 'outlet', v: step(outlet, minute, 2) }]
}

/** In quarters of a degree, and never quite still: a number that does not move is a fault of its own. */
const step = (c: number, minute: number, phase: number): number => Math.round((c + 0.6 * Math.sin(minute * 102 + phase)) * 4) / 4

function between(knots: readonly Knot[], minute: number): number {
  let before = knots[0] ?? [0, 0]
  for (const knot of knots) {
    if (knot[0] >= minute)
      return knot[0] === before[0] ? knot[1] : before[1] + ((knot[1] - before[1]) * (minute - before[0])) / (knot[0] - before[0])
    before = knot
  }
  return before[1]
}
