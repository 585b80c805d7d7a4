import type { Chance } from '../../../server/simulator/chance.ts'

// What chance settles of a drum of the third hand: the drum with its earth and its probe-side ways of heat, and what one day did in it.
// Orders of magnitude from trade facts 9.2.5-9.2.12; where no source is named the spread is this world's own guess.

export const slices = 10

export interface DrumPlan {
  litH: number
  rampH: number
  embersC: number
  charcoalKg: number
  /** Dry wood that the charcoal was made of, kg. */
  woodKg: number
  /** By slice: how hot the fire left it, when the fire came, charcoal, what it still gives after the seal, and its heat. */
  endC: number[]
  frontH: number[]
  charKg: number[]
  afterJ: number[]
  jK: number[]
  /** Along the bed, W/K; radially W/(m K); from its rim to the steel W/(m² K). */
  bedWK: number
  chargeWmK: number
  rimWm2K: number
  steelWmK: number
  endsWK: number
  /** Share of the steel under the cover; the rest lies on the ground. */
  above: number
  coverM: number
  earthWmK: number
  earthJm3K: number
  groundM: number
  groundWmK: number
  outerWm2K: number
}

export function drawDrum(chance: Chance): DrumPlan {
  const litH = chance.between(4.5, 15.5)
  const rampH = chance.between(0.8, 4)
  const embersC = chance.between(620, 850)
  // through the bed about 0.9 W/K, and across the space that shrinking charcoal leaves 1 (100 °C) to 3 (300 °C) by radiation: own estimate
  const bedWK = 2.5 * Math.exp(0.4 * chance.normal())
  const steelWmK = chance.branch('steel').between(45, 50)
  const endsWK = chance.between(0.05, 0.5)
  const above = chance.between(0.68, 0.95)
  const charcoalKg = chance.between(9, 24)
  const earthWmK = Math.exp(chance.between(Math.log(0.35), Math.log(1.5)))
  const earthJm3K = chance.between(1.25e6, 2.4e6)
  const chargeWmK = chance.between(0.3, 1.2)
  const coverM = chance.between(0.04, 0.14)
  // 25 to 36 % of the dry wood (trade facts 3.1.5-3.1.8), less what burns in a drum: own estimate
  const woodKg = charcoalKg / chance.branch('yield').between(0.22, 0.34)
  return {
    litH,
    rampH,
    embersC,
    charcoalKg,
    woodKg,
    ...drawCharge(chance, charcoalKg, litH),
    bedWK,
    chargeWmK,
    rimWm2K: chance.between(9, 30),
    steelWmK,
    endsWK,
    above,
    coverM,
    earthWmK,
    earthJm3K,
    groundM: chance.between(0.25, 0.5),
    groundWmK: earthWmK * chance.between(0.8, 1.3),
    outerWm2K: chance.between(6, 15),
  }
}

/** How far the fire got in each slice: hot at the mouth, less at the chimney; now and then the far end stayed raw. */
function drawCharge(chance: Chance, charcoalKg: number, litH: number): Pick<DrumPlan, 'endC' | 'frontH' | 'charKg' | 'afterJ' | 'jK'> {
  const mouthC = chance.between(400, 700)
  const farC = chance.often(0.25) ? chance.between(90, 260) : chance.between(240, Math.min(560, mouthC))
  const reach = chance.between(0.25, 1.6)
  const bump = chance.often(0.3) ? chance.between(0, 90) : 0
  const bumpAt = chance.between(0.1, 0.8)
  const wild = chance.between(0, 25)
  const plan = { endC: [] as number[], frontH: [] as number[], charKg: [] as number[], afterJ: [] as number[], jK: [] as number[] }
  for (let s = 0; s < slices; s++) {
    const x = (s + 0.5) / slices
    const fall = (1 - Math.exp(-x / reach)) / (1 - Math.exp(-1 / reach))
    const c = mouthC + (farC - mouthC) * fall + bump * Math.exp(-(((x - bumpAt) / 0.15) ** 2)) + wild * chance.normal()
    plan.endC.push(Math.max(80, c))
    plan.frontH.push(litH * (0.15 + 0.75 * x * chance.between(0.6, 1.1)))
    // what is not yet charcoal is heavier, holds more heat, and where it has begun gives some after the seal (trade facts 9.2.3)
    const raw = Math.min(1, Math.max(0, (380 - c) / 200))
    const kg = (charcoalKg / slices) * Math.exp(0.15 * chance.normal())
    plan.charKg.push(kg)
    plan.afterJ.push(raw > 0.02 && raw < 0.8 ? kg * 2 * raw * chance.between(0, 300e3) : 0)
    plan.jK.push(kg * (1250 + raw * chance.between(1500, 5000)))
  }
  return plan
}

/**
 * The same drum on another day: its steel, ends, ground and place stay; the earth is heaped anew and wetter or drier, the drum filled about as
 * before, the wood of the same kind; the fire is that of the day. The spreads are own judgement, no source.
 */
export function sameDrum(kiln: DrumPlan, chance: Chance): DrumPlan {
  const about = (value: number, spread: number): number => value * Math.exp(spread * chance.normal())
  const day = drawDrum(chance.branch('day'))
  const charcoalKg = about(kiln.charcoalKg, 0.12)
  const wet = Math.exp(0.12 * chance.normal())
  return {
    ...day,
    charcoalKg,
    woodKg: charcoalKg / (day.charcoalKg / day.woodKg),
    ...drawCharge(chance.branch('charge'), charcoalKg, day.litH),
    bedWK: about(kiln.bedWK, 0.15),
    chargeWmK: about(kiln.chargeWmK, 0.12),
    rimWm2K: about(kiln.rimWm2K, 0.12),
    steelWmK: kiln.steelWmK,
    endsWK: about(kiln.endsWK, 0.15),
    above: Math.min(0.97, about(kiln.above, 0.02)),
    coverM: about(kiln.coverM, 0.12),
    earthWmK: kiln.earthWmK * wet,
    earthJm3K: kiln.earthJm3K * Math.sqrt(wet),
    groundM: kiln.groundM,
    groundWmK: kiln.groundWmK * wet,
    outerWm2K: about(kiln.outerWm2K, 0.1),
  }
}
