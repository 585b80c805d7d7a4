import { type Memory, quantile } from './memory.ts'

// The signs that the learned judge weighs, scaled to be of order one. The trainer and the live judge call this same function.

/** Assumed where nobody weighed: a 200-litre drum of air-dry wood, kg and share of water on the wet basis. Common practice, no source. */
const usual = { massKg: 80, moisture: 0.27, pieceMm: 65 }

const ago = (values: readonly number[], minutes: number): number => values[Math.max(0, values.length - 1 - minutes)] ?? 0
const change = (values: readonly number[], minutes: number): number => ago(values, 0) - ago(values, minutes)

function hoursSince(memory: Memory, minute: number | null | undefined): number {
  return minute === null || minute === undefined ? 0 : Math.log(1 + (memory.minute - minute) / 60)
}

function chargeSigns(memory: Memory): { dryKg: number; waterKg: number; signs: number[] } {
  const { massKg, moisturePct, pieceMm } = memory.charge
  const known = massKg !== undefined && moisturePct !== undefined
  const mass = massKg ?? usual.massKg
  const moisture = moisturePct === undefined ? usual.moisture : moisturePct / 100
  const dryKg = mass * (1 - moisture)
  const waterKg = mass * moisture
  const piece = ((pieceMm ?? usual.pieceMm) - usual.pieceMm) / 20
  return { dryKg, waterKg, signs: [known ? 1 : 0, known ? (dryKg - 58) / 15 : 0, known ? (waterKg - 22) / 10 : 0, piece] }
}

/** A probe that has been silent for ten minutes is no probe. */
function smokeIsHeard(memory: Memory): boolean {
  return memory.smokeHeardAt !== null && memory.minute - memory.smokeHeardAt <= 10
}

function smokeSigns(memory: Memory, loadK: number): number[] {
  if (!smokeIsHeard(memory)) return [0, 0, 0, 0, 0, 0, 0, 0, 0, 0]
  const low = ago(memory.lowSmoke, 0)
  return [
    1,
    (low - 90) / 40,
    (quantile(memory.smoke, 5, 0.5) - 90) / 40,
    change(memory.lowSmoke, 30) / 15,
    change(memory.lowSmoke, 90) / 30,
    (low - loadK - memory.airC) / 50,
    ...memory.smokePassed.map((minute) => hoursSince(memory, minute)),
  ]
}

function seenSigns(memory: Memory): number[] {
  const grades = [1, 2, 3, 4, 5].map((grade) => (memory.drip === grade ? 1 : 0))
  const looks = [1, 2, 3, 4].map((look) => (memory.look === look ? 1 : 0))
  const dripAge = memory.drip > 0 ? Math.log(1 + (memory.minute - memory.dripAt) / 15) : 0
  const amberAge = memory.amberAt !== null && memory.drip >= 3 ? Math.log(1 + (memory.minute - memory.amberAt) / 15) : 0
  const wetAge = memory.wettedAt === null ? 0 : Math.min(memory.minute - memory.wettedAt, 60) / 30
  return [...grades, ...looks, dripAge, amberAge, memory.wettedAt === null ? 0 : 1, wetAge]
}

/** How many signs there are. */
export const signCount = 58

/** All signs of this minute; meaningful once lit and once every one of the three probes has been heard. */
export function signsOf(memory: Memory): number[] {
  const air = memory.airC
  const { dryKg, waterKg, signs: charge } = chargeSigns(memory)
  const wall = ago(memory.smoothWall, 0)
  const load = ago(memory.load, 0)
  const highLoad = quantile(memory.outlet, 20, 0.9) - air
  return [
    Math.max(memory.minute - (memory.litMinute ?? memory.minute), 0) / 60,
    (wall - air) / 100,
    change(memory.smoothWall, 20) / 20,
    change(memory.smoothWall, 60) / 60,
    change(memory.smoothWall, 150) / 150,
    ...memory.wallPassed.map((minute) => hoursSince(memory, minute)),
    load / 30,
    memory.peakLoadK / 30,
    Math.min(Math.max(load / Math.max(memory.peakLoadK, 8), -0.5), 1.2),
    change(memory.load, 60) / 20,
    change(memory.load, 120) / 20,
    (highLoad - load) / 20,
    (quantile(memory.outlet, 5, 0.5) - air) / 30,
    (quantile(memory.outlet, 60, 0.2) - air) / 30,
    memory.smoothFirebox / 600,
    memory.slowFirebox / 600,
    (ago(memory.firebox, 0) - memory.smoothFirebox) / 100,
    memory.heatKh / 4000,
    memory.heatKh / dryKg / 60,
    memory.heatSince100Kh / 4000,
    memory.heatSince100Kh / (dryKg + waterKg) / 60,
    memory.heatSince160Kh / 4000,
    memory.heatSince160Kh / (dryKg + waterKg) / 60,
    memory.loadKh / 100,
    ((memory.loadKh / 100) * 60) / (dryKg + 0.5 * waterKg),
    ...charge,
    air / 20,
    (wall - ago(memory.outlet, 0)) / 100,
    ...smokeSigns(memory, load),
    ...seenSigns(memory),
  ]
}
