import type { Chance } from '../../../server/simulator/chance.ts'

/** Air that gets into the sealed kiln. Times in hours after the seal. */
export interface Leak {
  fromH: number
  /** kg/s of air; breathes with wind and day by `breath`. */
  kgS: number
  breath: number
  /** From 0 at the mouth to 1 at the chimney: where it comes in. */
  place: number
  /** Charcoal that is fresh from the fire burns on from here, °C: usually 230 to 320; what was left open reactive far lower. */
  ignitionC: number
}

/** How often: own judgement, more often than in any yard, so that ten thousand hold many of each kind. */
const leaky = 0.25
const leakyOften = 0.5

/** A bad seal from the beginning, one that cracks as the clay dries, one in the night, and one in the morning at charcoal that still glows. */
export function drawLeak(chance: Chance, which: Which = 'any'): Leak | null {
  if (which === 'tight') return null
  if (which === 'hidden') return drawHidden(chance)
  if (which !== 'leak' && !chance.often(which === 'often' ? leakyOften : leaky)) return null
  const dice = chance.uniform()
  const fromH = dice < 0.25 ? 0 : dice < 0.65 ? chance.between(0.2, 4) : dice < 0.85 ? chance.between(4, 14) : chance.between(12, 30)
  const late = fromH > 10
  return {
    fromH,
    kgS: Math.exp(chance.between(Math.log(0.00003), Math.log(late ? 0.0015 : 0.0006))),
    breath: chance.between(0, 0.6),
    place: chance.often(0.6) ? 0 : chance.often(0.5) ? 1 : chance.uniform(),
    ignitionC: late && chance.often(0.5) ? chance.between(110, 200) : chance.between(200, 320),
  }
}

/**
 * Nights as they come; with more leaks; with none, with one in each; or such as teach what is hardest to see: a small fire at the end that is far
 * from the wall probe.
 */
export type Which = 'any' | 'often' | 'tight' | 'leak' | 'hidden'

function drawHidden(chance: Chance): Leak {
  const mouth = chance.often(0.65)
  return {
    fromH: chance.often(0.4) ? 0 : chance.between(0, 4),
    kgS: Math.exp(chance.between(Math.log(0.00003), Math.log(0.0003))),
    breath: chance.between(0, 0.6),
    place: chance.often(0.85) ? (mouth ? 0 : 1) : mouth ? chance.between(0, 0.3) : chance.between(0.7, 1),
    ignitionC: chance.between(200, 320),
  }
}

export function leaksKgS(leak: Leak | null, hour: number): number {
  if (leak === null || hour < leak.fromH) return 0
  return leak.kgS * (1 + leak.breath * Math.sin(1.9 * hour + leak.fromH))
}

/** A wall probe that sees little of such a fire: where it would sit, turned to the other half. */
export const farFrom = ({ place }: Leak, probeAt: number): number => (place > 0.5 === probeAt > 0.5 ? 1 - probeAt : probeAt)
