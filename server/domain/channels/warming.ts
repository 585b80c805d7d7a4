/** A probe's last good values, oldest first: time ms, °C. */
export interface Trail {
  channel: string
  trail: readonly (readonly [t: number, c: number])[]
}

export interface Rise {
  channel: string
  fromC: number
  toC: number
}

/** A hand warms a sheathed probe by some 5 K in half a minute (from memory); this much is more than a draught does. */
const leastRiseK = 2
/** The next one must lag so far behind: two probes that warm together are the sun, not a hand. */
const lead = 2

/** The one probe that somebody warms: risen since its lowest of the trail, and clearly more than every other. Null when none stands out. */
export function warmedOne(probes: readonly Trail[]): Rise | null {
  const [first, second] = probes.map(riseOf).sort((a, b) => b.toC - b.fromC - (a.toC - a.fromC))
  if (!first) return null
  const most = first.toC - first.fromC
  const next = second ? second.toC - second.fromC : 0
  return most >= leastRiseK && most >= lead * next ? first : null
}

function riseOf({ channel, trail }: Trail): Rise {
  const toC = trail.at(-1)?.[1] ?? 0
  return { channel, toC, fromC: trail.reduce((least, [, c]) => Math.min(least, c), toC) }
}

export interface Steady {
  meanC: number
  /** Largest less smallest. */
  spreadK: number
  /** How long was looked at, s. */
  forS: number
}

/** Mean and spread of the last half minute, for a point of calibration; null while nothing was heard. */
export function steadiness({ trail }: Trail): Steady | null {
  const last = trail.at(-1)
  if (!last) return null
  const recent = trail.filter(([t]) => last[0] - t <= 30_000)
  const values = recent.map(([, c]) => c)
  const [from = last] = recent
  return {
    meanC: values.reduce((sum, c) => sum + c, 0) / values.length,
    spreadK: Math.max(...values) - Math.min(...values),
    forS: (last[0] - from[0]) / 1000,
  }
}
