/** A seeded generator whose whole state is one 32-bit word (Mulberry's mixing, from memory): same numbers on every machine. */
export function nextUniform(word: Uint32Array, i = 0): number {
  word[i] = ((word[i] as number) + 0x6d2b79f5) >>> 0
  let t = word[i] as number
  t = Math.imul(t ^ (t >>> 15), t | 1)
  t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
  return ((t ^ (t >>> 14)) >>> 0) / 4294967296
}

/** Standard normal by summing twelve uniforms: no tails beyond six, no logarithm, good enough for a prior. */
export function nextNormal(word: Uint32Array): number {
  let sum = -6
  for (let k = 0; k < 12; k++) sum += nextUniform(word)
  return sum
}
