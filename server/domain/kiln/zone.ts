import * as exponential from './exp.ts'
import * as layout from './layout.ts'
import { rateTable, tableFromC, tableIndex, tableLength, yields } from './kinetics.ts'
import * as water from './water.ts'

// As names of this file: unbundled, every use of an import is a call.
const { eachPart, octaves, octaveTable, partBits, partMask, partTable, perE } = exponential
const { airPressureKPa, antoineA, antoineB, antoineC, humidity, latentKJ, steamAtZeroKJ, steamCp, waterCp, waterOverAir } = water
const {
  coreC: inCoreC,
  coreChar: inCoreChar,
  coreParts: inCoreParts,
  coreWater: inCoreWater,
  earthC: inEarthC,
  heldAcid: inHeldAcid,
  heldTar: inHeldTar,
  surfaceC: inSurfaceC,
  surfaceChar: inSurfaceChar,
  surfaceParts: inSurfaceParts,
  surfaceWater: inSurfaceWater,
  wallC: inWallC,
  zoneCount: inZoneCount,
} = layout

/** Books of one step for the tests: what crossed the border, kg and kJ. Enthalpies over 0 °C, water over liquid. */
export interface Books {
  waterIn: number
  waterOut: number
  acidOut: number
  tarOut: number
  gasOut: number
  heatIn: number
  heatOut: number
  heatLost: number
  heatMade: number
}

export const solidCp = 1.5 // kJ/(kg K), wood and char alike (trade facts 9.2.5, 9.2.6)
export const gasCp = 1.08 // dry fire gas at 300 °C
export const organicCp = 1.5 // trade facts 9.2.8
const perTarSlope = 1 / 22 // K: warming that lets the gas carry e times the tar, about a heat of 90 kJ/mol at 180 °C
export const mostVapourKPa = 0.97 * airPressureKPa
const leastGone = 1e-12 // kg in a step: less is nothing
const [y0, y1, y2] = yields

// Where on the bench what stands: numbers go over it because a call that is not inlined would put each on the heap.
const atGaveWater = 0
const atGaveAcid = 1
const atGaveTar = 2
const atGaveGas = 3
const atGave = 4
const atCelsius = 5
export const atSeconds = 6
export const atAcidYield = 7
export const atTarYield = 8
export const atToWood = 9
export const atToWall = 10
export const atBoth = 11
export const atPerBoth = 12
export const atPerDt = 13
export const atTouch = 14
export const atToEarth = 15
export const atToAir = 16
export const atDtPerEarthHeat = 17
export const atDtPerWallHeat = 18
export const atToCore = 19
export const atSeep = 20
export const atBoil = 21
export const atShift = 22
export const atHeat = 23
export const atTarBoils = 24
export const atMistShare = 25
export const atAcidVolatility = 26
export const atSeen = 27
export const atExchange = 28
export const atPlace = 29
export const atAmb = 30
export const atGasC = 31
export const atDryGas = 32
export const atSteam = 33
export const atAcid = 34
export const atTar = 35
export const atMist = 36
export const atProbeWall = 37
export const atProbeWeight = 38
/** Numbers of the bench that a step works on. */
export const benchLength = 39

/** Breakdown of one node in place, from `tableFromC` on; what it gave off stands on the bench. False: nothing gave way. */
function breakDown(x: Float64Array, parts: number, char: number, m: Float64Array): boolean {
  const i = tableIndex(m[atCelsius] as number)
  const row = Math.floor(i)
  const part = i - row
  const seconds = m[atSeconds] as number
  const low0 = rateTable[row] as number
  const low1 = rateTable[tableLength + row] as number
  const low2 = rateTable[2 * tableLength + row] as number
  const k0 = (low0 + ((rateTable[row + 1] as number) - low0) * part) * seconds
  const k1 = (low1 + ((rateTable[tableLength + row + 1] as number) - low1) * part) * seconds
  const k2 = (low2 + ((rateTable[2 * tableLength + row + 1] as number) - low2) * part) * seconds
  const gone0 = ((x[parts] as number) * k0) / (1 + k0)
  const gone1 = ((x[parts + 1] as number) * k1) / (1 + k1)
  const gone2 = ((x[parts + 2] as number) * k2) / (1 + k2)
  const gone = gone0 + gone1 + gone2
  if (gone < leastGone) return false
  const toChar = gone0 * y0.char + gone1 * y1.char + gone2 * y2.char
  const acid = (gone0 * y0.acid + gone1 * y1.acid + gone2 * y2.acid) * (m[atAcidYield] as number)
  const tar = (gone0 * y0.tar + gone1 * y1.tar + gone2 * y2.tar) * (m[atTarYield] as number)
  const water = gone0 * y0.water + gone1 * y1.water + gone2 * y2.water
  x[parts] = (x[parts] as number) - gone0
  x[parts + 1] = (x[parts + 1] as number) - gone1
  x[parts + 2] = (x[parts + 2] as number) - gone2
  x[char] = (x[char] as number) + toChar
  m[atGaveWater] = water
  m[atGaveAcid] = acid
  m[atGaveTar] = tar
  m[atGaveGas] = gone - toChar - water - acid - tar
  m[atGave] = gone
  return true
}

/** Drying cools wood no further under the air than this: the wet bulb of dry air at 40 °C (from memory). A step that is too long would. */
const wetBulbK = 25

// No loop over zones or parts around much work: a long loop is replaced on the stack while it runs (by V8), and now and then the
// function then stays in that slow form for good, at a third of the speed.

/** One zone of one step; the gas goes over the bench `m` from zone to zone. */
export function zone(x: Float64Array, b: number, z: number, m: Float64Array, books: Books | undefined): void {
  const toWood = m[atToWood] as number
  const toWall = m[atToWall] as number
  const both = m[atBoth] as number
  const perBoth = m[atPerBoth] as number
  const dt = m[atSeconds] as number
  const perDt = m[atPerDt] as number
  const touch = m[atTouch] as number
  const toCore = m[atToCore] as number
  const shift = m[atShift] as number
  const heat = m[atHeat] as number
  const mistShare = m[atMistShare] as number
  const seen = m[atSeen] as number
  const exchange = m[atExchange] as number
  const place = m[atPlace] as number
  const amb = m[atAmb] as number
  let gasC = m[atGasC] as number
  let dryGas = m[atDryGas] as number
  let steam = m[atSteam] as number
  let acid = m[atAcid] as number
  let tar = m[atTar] as number
  let mist = m[atMist] as number
  let probeWall = m[atProbeWall] as number
  let probeWeight = m[atProbeWeight] as number
  let ts = x[b + inSurfaceC] as number
  let tc = x[b + inCoreC] as number
  const tw = x[b + inWallC] as number
  const te = x[b + inEarthC] as number
  const sp = b + inSurfaceParts
  const cp = b + inCoreParts
  const solidS = (x[sp] as number) + (x[sp + 1] as number) + (x[sp + 2] as number) + (x[b + inSurfaceChar] as number)
  const solidC = (x[cp] as number) + (x[cp + 1] as number) + (x[cp + 2] as number) + (x[b + inCoreChar] as number)
  let waterS = x[b + inSurfaceWater] as number
  let waterC = x[b + inCoreWater] as number
  let heldTar = x[b + inHeldTar] as number
  let heldAcid = x[b + inHeldAcid] as number
  // gas against wood surface and wall
  let flow = dryGas * gasCp + steam * steamCp + (acid + tar + mist) * organicCp
  const perFlow = 1 / flow
  const perDryGas = 1 / dryGas
  const sink = (toWood * ts + toWall * tw) * perBoth
  // the exponentials of `exp.ts` are written out in this loop: so much is not inlined reliably, and a call would cost more than the work
  const lost0 = both * perFlow < 40 ? -both * perFlow : -40
  const i0 = Math.floor(lost0 * perE + 0.5)
  const r0 = lost0 - i0 * eachPart
  const s0 = 1 + r0 * (1 + r0 * (0.5 + r0 * (1 / 6 + r0 * (1 / 24 + r0 * (1 / 120)))))
  const eff = 1 - s0 * (partTable[i0 & partMask] as number) * (octaveTable[(i0 >> partBits) + octaves] as number)
  const meanC = sink + (gasC - sink) * eff * flow * perBoth
  const gasMeanC = meanC
  const qs = toWood * (meanC - ts)
  const qw = toWall * (meanC - tw)
  gasC -= (qs + qw) * perFlow
  // water at the surface: towards the humidity of its own temperature (dew point), linearised in the new temperature
  let heatS = solidCp * solidS + waterCp * waterS + organicCp * (heldTar + heldAcid)
  const heatC = solidCp * solidC + waterCp * waterC
  const loose = waterS / (waterS + 0.03 * solidS)
  const perAntoine = 1 / (antoineC + ts)
  let vapour = 0
  if (waterS !== 0) {
    const x1 = antoineA - antoineB * perAntoine
    const i1 = Math.floor(x1 * perE + 0.5)
    const r1 = x1 - i1 * eachPart
    const s1 = 1 + r1 * (1 + r1 * (0.5 + r1 * (1 / 6 + r1 * (1 / 24 + r1 * (1 / 120)))))
    vapour = loose * s1 * (partTable[i1 & partMask] as number) * (octaveTable[(i1 >> partBits) + octaves] as number)
  }
  const capped = vapour > mostVapourKPa
  if (capped) vapour = mostVapourKPa
  const k = dryGas * exchange
  const perRest = 1 / (airPressureKPa - vapour)
  const wetting = k * (waterOverAir * vapour * perRest - steam * perDryGas)
  const slope =
    capped || vapour === 0 ? 0 : k * waterOverAir * airPressureKPa * vapour * antoineB * perAntoine * perAntoine * perRest * perRest
  const latent = latentKJ(ts)
  const pull = qs + toCore * (tc - ts) + touch * (tw - ts)
  const a12 = -dt * toCore
  const a22 = heatC + dt * toCore
  const perA22 = 1 / a22
  const r2 = -dt * toCore * (tc - ts)
  let a11 = heatS + dt * (latent * slope + toCore)
  let r1 = dt * (pull - latent * wetting)
  let rise = (r1 * a22 - a12 * r2) / (a11 * a22 - a12 * a12)
  let off = wetting + slope * rise
  const most = waterS * perDt
  const least = -0.98 * steam
  if (off > most || off < least) {
    off = off > most ? most : least
    a11 = heatS + dt * toCore
    r1 = dt * (pull - latent * off)
    rise = (r1 * a22 - a12 * r2) / (a11 * a22 - a12 * a12)
  }
  const riseC = (r2 - a12 * rise) * perA22
  // the water that comes or goes does so at the old surface temperature
  const carried = waterCp * off * dt
  ts = ts + rise * (heatS / (heatS - carried > 0.2 * heatS ? heatS - carried : 0.2 * heatS))
  if (ts < amb - wetBulbK) ts = amb - wetBulbK
  tc += riseC
  waterS -= off * dt
  // acids: the gas and the water on the wood come to terms, so wet wood washes the acids out until it is sour or dry
  let souring = 0
  if (heldAcid !== 0) {
    const full = capped ? vapour : Math.min(mostVapourKPa, vapour / (loose + 1e-9))
    souring = (m[atAcidVolatility] as number) * (heldAcid / (waterS + 0.03 * solidS + heldAcid)) * humidity(full)
  }
  let acidOff = k * (souring - acid * perDryGas)
  if (acidOff * dt > heldAcid) acidOff = heldAcid * perDt
  else if (acidOff < -0.95 * acid) acidOff = -0.95 * acid
  // tar: what the gas can carry at the wood's temperature
  let can = 0
  if (heldTar !== 0) {
    const x2 = (ts - (m[atTarBoils] as number)) * perTarSlope
    const i2 = Math.floor(x2 * perE + 0.5)
    const r2 = x2 - i2 * eachPart
    const s2 = 1 + r2 * (1 + r2 * (0.5 + r2 * (1 / 6 + r2 * (1 / 24 + r2 * (1 / 120)))))
    can = s2 * (partTable[i2 & partMask] as number) * (octaveTable[(i2 >> partBits) + octaves] as number)
    can *= heldTar / (heldTar + 0.001 * solidS + 1e-9)
  }
  let tarOff = k * (can - tar * perDryGas)
  if (tarOff * dt > heldTar) tarOff = heldTar * perDt
  else if (tarOff < -0.95 * tar) tarOff = -0.95 * tar
  const back = flow + steamCp * off + organicCp * (acidOff + tarOff) || 1e-9
  gasC = (gasC * flow + (steamCp * off + organicCp * (acidOff + tarOff)) * (x[b + inSurfaceC] as number)) / back
  // what condenses leaves at the wood's temperature: where nearly all of a cool gas does, the rest would come out below the air
  if (gasC < amb) gasC = amb
  heldAcid -= acidOff * dt
  heldTar -= tarOff * dt
  steam += off
  acid += acidOff
  tar += tarOff
  flow = back
  // boiling in the core, bound water later
  if (waterC > 0) {
    const moist = waterC / solidC
    const boilsC = 99 + 25 * (0.05 / (moist + 0.05))
    if (tc > boilsC) {
      const lam = latentKJ(tc)
      let gone = (((tc - boilsC) * heatC) / lam) * (m[atBoil] as number)
      if (gone > waterC) gone = waterC
      tc -= (gone * lam) / (heatC - waterCp * gone > 0.1 ? heatC - waterCp * gone : 0.1)
      waterC -= gone
      const carries = steamCp * gone * perDt
      gasC = (gasC * flow + carries * tc) / (flow + carries)
      flow += carries
      steam += gone * perDt
    }
    // water creeps outwards
    const creep = (waterC / solidC - waterS / solidS) * solidC * 0.5 * (m[atSeep] as number)
    if (creep > 0) {
      const hs = solidCp * solidS + waterCp * waterS + organicCp * (heldTar + heldAcid)
      ts = (ts * hs + waterCp * creep * tc) / (hs + waterCp * creep)
      waterC -= creep
      waterS += creep
    }
  }
  // breakdown of surface and core
  let newMist = 0
  m[atCelsius] = ts + shift
  if (m[atCelsius] >= tableFromC && breakDown(x, sp, b + inSurfaceChar, m)) {
    heatS = solidCp * solidS + waterCp * waterS
    ts += (heat * (m[atGave] as number)) / heatS
    const g = (m[atGaveGas] as number) * perDt
    const w = (m[atGaveWater] as number) * perDt
    const c = ((m[atGaveAcid] as number) + (m[atGaveTar] as number)) * perDt
    const carries = gasCp * g + steamCp * w + organicCp * c
    gasC = (gasC * flow + carries * ts) / (flow + carries)
    flow += carries
    dryGas += g
    steam += w
    acid += (m[atGaveAcid] as number) * perDt
    newMist += (m[atGaveTar] as number) * perDt
    if (books)
      books.heatMade +=
        heat * (m[atGave] as number) +
        (m[atGaveWater] as number) * (steamAtZeroKJ + (steamCp - solidCp) * ts) +
        (m[atGaveGas] as number) * (gasCp - solidCp) * ts
  }
  m[atCelsius] = tc + shift
  if (m[atCelsius] >= tableFromC && breakDown(x, cp, b + inCoreChar, m)) {
    tc += (heat * (m[atGave] as number)) / (solidCp * solidC + waterCp * waterC)
    const g = (m[atGaveGas] as number) * perDt
    const w = (m[atGaveWater] as number) * perDt
    const c = ((m[atGaveAcid] as number) + (m[atGaveTar] as number)) * perDt
    const carries = gasCp * g + steamCp * w + organicCp * c
    // the last to mix with the gas of this zone: the next one takes its flow anew from what the gas carries by then
    gasC = (gasC * flow + carries * tc) / (flow + carries)
    dryGas += g
    steam += w
    acid += (m[atGaveAcid] as number) * perDt
    newMist += (m[atGaveTar] as number) * perDt
    if (books)
      books.heatMade +=
        heat * (m[atGave] as number) +
        (m[atGaveWater] as number) * (steamAtZeroKJ + (steamCp - solidCp) * tc) +
        (m[atGaveGas] as number) * (gasCp - solidCp) * tc
  }
  mist += newMist * mistShare
  tar += newMist * (1 - mistShare)
  // wall and earth
  const out = (m[atToEarth] as number) * (tw - te)
  const lost = (m[atToAir] as number) * (te - amb)
  x[b + inWallC] = tw + (m[atDtPerWallHeat] as number) * (qw - touch * (tw - (x[b + inSurfaceC] as number)) - out)
  x[b + inEarthC] = te + (m[atDtPerEarthHeat] as number) * (out - lost)
  if (books) books.heatLost += lost * dt
  x[b + inSurfaceC] = ts
  x[b + inCoreC] = tc
  x[b + inSurfaceWater] = waterS
  x[b + inCoreWater] = waterC
  x[b + inHeldTar] = heldTar
  x[b + inHeldAcid] = heldAcid
  const near = 1 - Math.abs(place - z)
  const weight = near > 0 ? near : (z === 0 && place < 0) || (z === inZoneCount - 1 && place > inZoneCount - 1) ? 1 : 0
  if (weight > 0) {
    probeWall += weight * ((1 - seen) * (x[b + inWallC] as number) + seen * gasMeanC)
    probeWeight += weight
  }
  m[atGasC] = gasC
  m[atDryGas] = dryGas
  m[atSteam] = steam
  m[atAcid] = acid
  m[atTar] = tar
  m[atMist] = mist
  m[atProbeWall] = probeWall
  m[atProbeWeight] = probeWeight
}
