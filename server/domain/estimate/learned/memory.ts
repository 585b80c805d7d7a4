import type { Charge } from '../../../contract/fold.ts'

/** One minute of a firing as the learned judge sees it. Means of the minute, °C; null: nothing good arrived. */
export interface Minute {
  fireboxC: number | null
  wallC: number | null
  outletC: number | null
  smokeC: number | null
  fed: boolean
  wetted: boolean
  /** 0 nothing seen in this minute, else 1 clear, 2 pale, 3 amber, 4 dark, 5 black. */
  drip: number
  /** 0 nothing seen in this minute, else 1 white, 2 yellow, 3 blue, 4 clear. */
  smoke: number
}

/** How many minutes are kept: the longest look back is two and a half hours. */
const keptMinutes = 151
/** Wall and smoke temperatures whose first passing is remembered, °C. */
export const wallMarks = [60, 100, 160, 220, 280] as const
export const smokeMarks = [75, 90, 105, 120] as const

/** Everything remembered of a firing, in minutes; plain numbers, so that it freezes as JSON. */
export interface Memory {
  minute: number
  litMinute: number | null
  airC: number
  charge: Charge
  firebox: number[]
  outlet: number[]
  smoke: number[]
  smoothWall: number[]
  /** Lower quarter of half an hour of the outlet over the air, K: the load of the condenser with the ups and downs of the cloths taken out. */
  load: number[]
  lowSmoke: number[]
  smoothFirebox: number
  slowFirebox: number
  peakLoadK: number
  loadKh: number
  heatKh: number
  heatSince100Kh: number
  heatSince160Kh: number
  wallPassed: (number | null)[]
  smokePassed: (number | null)[]
  smokeHeardAt: number | null
  fedAt: number | null
  wettedAt: number | null
  drip: number
  dripAt: number
  amberAt: number | null
  look: number
}

export function emptyMemory(charge: Charge): Memory {
  return {
    minute: 0,
    litMinute: null,
    airC: 20,
    charge,
    firebox: [],
    outlet: [],
    smoke: [],
    smoothWall: [],
    load: [],
    lowSmoke: [],
    smoothFirebox: 0,
    slowFirebox: 0,
    peakLoadK: 0,
    loadKh: 0,
    heatKh: 0,
    heatSince100Kh: 0,
    heatSince160Kh: 0,
    wallPassed: wallMarks.map(() => null),
    smokePassed: smokeMarks.map(() => null),
    smokeHeardAt: null,
    fedAt: null,
    wettedAt: null,
    drip: 0,
    dripAt: 0,
    amberAt: null,
    look: 0,
  }
}

const last = (values: readonly number[]): number | undefined => values[values.length - 1]

function keep(values: number[], value: number): void {
  values.push(value)
  if (values.length > keptMinutes) values.shift()
}

/** The q-quantile (0..1) of the newest `count` values, interpolated; NaN of nothing. */
export function quantile(values: readonly number[], count: number, q: number): number {
  const part = values.slice(-count).sort((a, b) => a - b)
  if (part.length === 0) return NaN
  const at = q * (part.length - 1)
  const low = Math.floor(at)
  const a = part[low] ?? NaN
  const b = part[low + 1] ?? a
  return a + (b - a) * (at - low)
}

function nearer(from: number, to: number, minutes: number): number {
  return from + (1 - Math.exp(-1 / minutes)) * (to - from)
}

/** Lighting: what the probes said in the quarter of an hour before is the air. */
export function light(memory: Memory): void {
  memory.litMinute = memory.minute
  const before = [...memory.outlet.slice(-15), ...memory.smoothWall.slice(-15)]
  if (before.length > 0) memory.airC = quantile(before, before.length, 0.5)
  memory.peakLoadK = 0
}

/** One minute on. Changes `memory`; a channel that is silent keeps its last value, as long as it ever had one. */
export function rememberMinute(memory: Memory, heard: Minute): void {
  memory.minute++
  const outlet = heard.outletC ?? last(memory.outlet)
  const wall = heard.wallC ?? last(memory.smoothWall)
  const firebox = heard.fireboxC ?? last(memory.firebox)
  if (outlet === undefined || wall === undefined || firebox === undefined) return
  const first = memory.smoothWall.length === 0
  keep(memory.firebox, firebox)
  keep(memory.outlet, outlet)
  keep(memory.smoothWall, first ? wall : nearer(last(memory.smoothWall) ?? wall, wall, 3))
  memory.smoothFirebox = first ? firebox : nearer(memory.smoothFirebox, firebox, 20)
  memory.slowFirebox = first ? firebox : nearer(memory.slowFirebox, firebox, 90)
  if (heard.smokeC !== null) {
    keep(memory.smoke, heard.smokeC)
    keep(memory.lowSmoke, quantile(memory.smoke, 25, 0.25))
    memory.smokeHeardAt = memory.minute
  }
  keep(memory.load, quantile(memory.outlet, 30, 0.25) - memory.airC)
  rememberSeen(memory, heard)
  if (memory.litMinute !== null) addUp(memory, firebox, outlet)
}

function rememberSeen(memory: Memory, heard: Minute): void {
  if (heard.fed) memory.fedAt = memory.minute
  if (heard.wetted) memory.wettedAt = memory.minute
  if (heard.smoke > 0) memory.look = heard.smoke
  if (heard.drip === 0) return
  if (heard.drip >= 3 && memory.drip < 3) memory.amberAt = memory.minute
  memory.drip = heard.drip
  memory.dripAt = memory.minute
}

/** Sums of a lit firing: heat as firebox over outlet, and the condenser's load, K·h. */
function addUp(memory: Memory, firebox: number, outlet: number): void {
  const load = last(memory.load) ?? 0
  const since = memory.minute - (memory.litMinute ?? 0)
  if (since > 20) memory.peakLoadK = Math.max(memory.peakLoadK, load)
  memory.loadKh += Math.max(load, 0) / 60
  const wall = last(memory.smoothWall) ?? 0
  wallMarks.forEach((mark, i) => {
    if (wall > mark) memory.wallPassed[i] ??= memory.minute
  })
  const smoke = last(memory.lowSmoke)
  if (smoke !== undefined)
    smokeMarks.forEach((mark, i) => {
      if (smoke > mark) memory.smokePassed[i] ??= memory.minute
    })
  const heat = Math.max(firebox - outlet, 0) / 60
  memory.heatKh += heat
  if (memory.wallPassed[1] !== null) memory.heatSince100Kh += heat
  if (memory.wallPassed[2] !== null) memory.heatSince160Kh += heat
}
