// The sealed kiln: no gas moves, heat goes from the charcoal through drum and earth to the air. Two slices of the drum are followed:
// the one under the wall probe and the hottest one. Heat is counted in charcoal's own heat capacity, time in hours.

/** What is unknown about a cooling kiln; normal numbers scaled as named. Spreads: own judgement, wide. */
export const coolingUnknowns = [
  { name: 'innerH', median: 1.65, spread: 0.3, scale: 'log' }, // h from charcoal to drum: 15 kg in a bed of 0.27 W/mK (trade facts 9.2.7)
  { name: 'drumHeat', median: 1.1, spread: 0.3, scale: 'log' }, // drum and skin of earth over charcoal (trade facts 9.2.9, 9.2.10)
  { name: 'earthHeat', median: 5.8, spread: 0.3, scale: 'log' }, // warmed earth over charcoal (trade facts 9.2.12)
  { name: 'drumToEarth', median: 0.8, spread: 0.3, scale: 'log' }, // per hour
  { name: 'earthToAir', median: 1.3, spread: 0.32, scale: 'log' }, // per hour
  { name: 'charcoalOverWall', median: 40, spread: 35, scale: 'linear' }, // K at sealing, under the probe
  { name: 'hottestOver', median: 50, spread: 0.45, scale: 'log' }, // K of the hottest slice over the probe's at sealing
  { name: 'earthShare', median: 0.45, spread: 0.5, scale: 'share' }, // of the drum's warmth at sealing, in the earth
  { name: 'hottestKeeps', median: 0.98, spread: 0.1, scale: 'log' }, // loss of the probe's slice over that of the hottest one
  { name: 'airOffset', median: 0, spread: 1.0, scale: 'linear' }, // K, air at the kiln over the reading used for it
  { name: 'leak', median: 7, spread: 0.6, scale: 'log' }, // K/h that air getting in makes, where it does
] as const

export const coolingCount = coolingUnknowns.length
/** State: charcoal, drum, earth under the probe; the same three where it is hottest; °C. */
export const coolingState = 6
export const coolingStepH = 1 / 6

export function coolingValue(i: number, z: number): number {
  const u = coolingUnknowns[i] as (typeof coolingUnknowns)[number]
  if (u.scale === 'log') return u.median * Math.exp(u.spread * z)
  if (u.scale === 'linear') return u.median + u.spread * z
  return 1 / (1 + Math.exp(-(Math.log(u.median / (1 - u.median)) + u.spread * z)))
}

/** Half-charred wood holds more heat than charcoal: all is slower by `slow`. */
export function slowed(i: number, value: number, slow: number): number {
  if (i === 0) return value * slow
  return (i >= 1 && i <= 4) || i === coolingCount - 1 ? value / slow : value
}

/** Puts a kiln at the moment of sealing: the wall as read, the rest by its unknowns. */
export function sealAt(x: Float64Array, o: number, v: Float64Array, q: number, wallC: number, airC: number): void {
  const over = Math.max(0, v[q + 5] as number)
  const earth = airC + (v[q + 7] as number) * (wallC - airC)
  x[o] = wallC + over
  x[o + 1] = wallC
  x[o + 2] = earth
  const hotter = v[q + 6] as number
  x[o + 3] = wallC + over + hotter
  x[o + 4] = wallC + 0.5 * hotter
  x[o + 5] = earth + 0.3 * hotter
}

/** One implicit step of a slice: three nodes in a row, solved exactly for the end temperatures, so any step is stable and heat is kept. */
function slice(
  x: Float64Array,
  o: number,
  toDrum: number,
  drum: number,
  earth: number,
  toEarth: number,
  toAir: number,
  made: number,
  airC: number,
  h: number,
): void {
  const a = h * toDrum
  const b = h * toEarth
  const c = h * toAir
  // charcoal: (1 + a) H - a W = H0 + made; drum: -a H + (drum + a + b) W - b E = drum W0; earth: -b W + (earth + b + c) E = earth E0 + c air
  const r0 = (x[o] as number) + made * h
  const r1 = drum * (x[o + 1] as number)
  const r2 = earth * (x[o + 2] as number) + c * airC
  const d2 = earth + b + c
  const d1 = drum + a + b - (b * b) / d2 - (a * a) / (1 + a)
  const w = (r1 + (b * r2) / d2 + (a * r0) / (1 + a)) / d1
  x[o] = (r0 + a * w) / (1 + a)
  x[o + 1] = w
  x[o + 2] = (r2 + b * w) / d2
}

/** Ten minutes of cooling; `leaks` 0 or 1. */
export function coolStep(x: Float64Array, o: number, v: Float64Array, q: number, airC: number, leaks: number): void {
  const air = airC + (v[q + 9] as number)
  // burning charcoal needs to be hot, and gives what the air that gets in allows
  const made = leaks * (v[q + 10] as number)
  slice(
    x,
    o,
    1 / (v[q] as number),
    v[q + 1] as number,
    v[q + 2] as number,
    v[q + 3] as number,
    v[q + 4] as number,
    (x[o] as number) > 60 ? made : 0,
    air,
    coolingStepH,
  )
  slice(
    x,
    o + 3,
    1 / (v[q] as number),
    v[q + 1] as number,
    v[q + 2] as number,
    (v[q + 3] as number) / (v[q + 8] as number),
    (v[q + 4] as number) / (v[q + 8] as number),
    (x[o + 3] as number) > 60 ? 2 * made : 0,
    air,
    coolingStepH,
  )
}
