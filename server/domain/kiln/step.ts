import * as L from './layout.ts'
import { partShares, rateTable, tableIndex, tableLength, yields } from './kinetics.ts'
import { at, coreConductanceAt, coreShareAt, dryKgAt, waterKgAt } from './parameters.ts'
import { airPressureKPa, humidity, latentKJ, saturationKPa, saturationSlope, steamCp, steamAtZeroKJ, waterCp } from './water.ts'

/** What drives the kiln for one step. */
export interface Drive {
  fireC: number
  ambientC: number
  /** Condenser outlet: what the condensate leaves behind in the gas. */
  outletC: number
  /** Since lighting: the draught of a firing wanders. */
  hours: number
  /** Mouth and chimney, 1 open .. 0 closed. */
  air: number
  seconds: number
}

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
const gasCp = 1.08 // dry fire gas at 300 °C
const organicCp = 1.5 // trade facts 9.2.8
export const steelHeat = 32 // kJ/K: 20 kg of drum and the first centimetre of earth (trade facts 9.2.10, 9.2.12)
const tarSlopeK = 22 // warming that lets the gas carry e times the tar, about a heat of 90 kJ/mol at 180 °C
const meanS = 480 // the condensate of the moment is a mean over eight minutes
const leastCaught = 0.2 // of the vapour, by a warm condenser
const wallLagS = 90 // probe clamped to the drum
const smokeLagS = 25 // 3 mm sheath in slow gas (instrument facts 3.5)

/** A cold kiln, just loaded. */
export function load(x: Float64Array, o: number, p: Float64Array, q: number, coldC: number): void {
  x.fill(0, o, o + L.stateLength)
  const n = L.zoneCount
  const dry = (p[q + dryKgAt] as number) / n
  const water = (p[q + waterKgAt] as number) / n
  const core = p[q + coreShareAt] as number
  for (let z = 0; z < n; z++) {
    const b = o + z * L.zoneStride
    for (const k of [L.surfaceC, L.coreC, L.wallC, L.earthC]) x[b + k] = coldC
    x[b + L.surfaceWater] = water * (1 - core)
    x[b + L.coreWater] = water * core
    for (let j = 0; j < 3; j++) {
      x[b + L.surfaceParts + j] = dry * (1 - core) * partShares[j as 0 | 1 | 2]
      x[b + L.coreParts + j] = dry * core * partShares[j as 0 | 1 | 2]
    }
  }
  x[o + L.smokeProbeC] = coldC
  x[o + L.wallProbeC] = coldC
  x[o + L.smokeC] = coldC
}

/** Breakdown of one node in place; writes what it gave off into `given`: water, acid, tar, gas, reacted (kg). */
function breakDown(
  x: Float64Array,
  parts: number,
  char: number,
  celsius: number,
  seconds: number,
  acidYield: number,
  tarYield: number,
  given: Float64Array,
): void {
  const i = tableIndex(celsius)
  given.fill(0)
  if (i < 0) return
  const whole = Math.floor(i)
  const part = i - whole
  for (let j = 0; j < 3; j++) {
    const row = j * tableLength + whole
    const low = rateTable[row] as number
    const k = (low + ((rateTable[row + 1] as number) - low) * part) * seconds
    const gone = ((x[parts + j] as number) * k) / (1 + k)
    if (gone < 1e-12) continue
    const y = yields[j as 0 | 1 | 2]
    x[parts + j] = (x[parts + j] as number) - gone
    x[char] = (x[char] as number) + gone * y.char
    const acid = gone * y.acid * acidYield
    const tar = gone * y.tar * tarYield
    const water = gone * y.water
    given[0] = (given[0] as number) + water
    given[1] = (given[1] as number) + acid
    given[2] = (given[2] as number) + tar
    given[3] = (given[3] as number) + (gone * (1 - y.char) - water - acid - tar)
    given[4] = (given[4] as number) + gone
  }
}

/** One step of one kiln: state `x` from `o`, physical values `p` from `q`. `given` is scratch of five numbers. */
export function step(x: Float64Array, o: number, p: Float64Array, q: number, drive: Drive, given: Float64Array, books?: Books): void {
  const n = L.zoneCount
  const dt = drive.seconds
  const amb = drive.ambientC
  const warm = ((x[o + L.smokeC] as number) - 70) / 100
  const swing = (p[q + at.draughtDrift] as number) * (warm < -0.5 ? -0.5 : warm > 2 ? 2 : warm)
  const early = drive.hours < 1 ? 1 : drive.hours > 4 ? 0 : (4 - drive.hours) / 3
  const late = drive.hours < 5 ? 0 : drive.hours > 10 ? 1 : (drive.hours - 5) / 5
  const season = 1 + early * ((p[q + at.draughtEarly] as number) - 1) + late * ((p[q + at.draughtLate] as number) - 1)
  const gas = (p[q + at.draught] as number) * season * (1 + (swing < -0.6 ? -0.6 : swing)) * drive.air
  const fire = drive.fireC > amb ? drive.fireC : amb
  let gasC = amb + (p[q + at.inletShare] as number) * (fire - amb)
  const burning = fire > 350 ? 1 : fire < 80 ? 0.1 : 0.1 + (0.9 * (fire - 80)) / 270
  let steam = gas * (p[q + at.fireWater] as number) * burning
  let acid = 0
  let tar = 0
  let mist = 0
  let dryGas = gas
  const toWood = (p[q + at.gasToWood] as number) / n
  const toWall = (p[q + at.gasToWall] as number) / n
  const both = toWood + toWall
  const touch = (p[q + at.woodToWall] as number) / n
  const toEarth = (p[q + at.wallToEarth] as number) / n
  const toAir = (p[q + at.earthToAir] as number) / n
  const earthHeat = (p[q + at.earthHeat] as number) / n
  const wallHeat = steelHeat / n
  const toCore = (p[q + coreConductanceAt] as number) / n
  const seep = dt / (dt + 9000 * (p[q + at.piece] as number) * (p[q + at.piece] as number))
  const boil = dt / (dt + 40)
  const shift = p[q + at.kinetics] as number
  const heat = p[q + at.breakdownHeat] as number
  const acidYield = p[q + at.acidYield] as number
  const tarYield = p[q + at.tarYield] as number
  const tarBoils = p[q + at.tarBoils] as number
  const mistShare = p[q + at.mist] as number
  const acidVolatility = p[q + at.acidVolatility] as number
  const exchange = 1 - Math.exp(-toWood / (gas * gasCp))
  const place = (p[q + at.probePlace] as number) * n - 0.5
  let probeWall = 0
  let probeWeight = 0
  if (books) {
    books.waterIn += steam * dt
    books.heatIn += (gas * gasCp * gasC + steam * (steamAtZeroKJ + steamCp * gasC)) * dt
  }
  for (let z = 0; z < n; z++) {
    const b = o + z * L.zoneStride
    let ts = x[b + L.surfaceC] as number
    let tc = x[b + L.coreC] as number
    const tw = x[b + L.wallC] as number
    const te = x[b + L.earthC] as number
    const sp = b + L.surfaceParts
    const cp = b + L.coreParts
    const solidS = (x[sp] as number) + (x[sp + 1] as number) + (x[sp + 2] as number) + (x[b + L.surfaceChar] as number)
    const solidC = (x[cp] as number) + (x[cp + 1] as number) + (x[cp + 2] as number) + (x[b + L.coreChar] as number)
    let waterS = x[b + L.surfaceWater] as number
    let waterC = x[b + L.coreWater] as number
    let heldTar = x[b + L.heldTar] as number
    let heldAcid = x[b + L.heldAcid] as number
    // gas against wood surface and wall
    let flow = dryGas * gasCp + steam * steamCp + (acid + tar + mist) * organicCp
    const sink = (toWood * ts + toWall * tw) / both
    const ntu = both / flow
    const eff = 1 - Math.exp(-ntu)
    const meanC = sink + ((gasC - sink) * eff) / ntu
    const gasMeanC = meanC
    const qs = toWood * (meanC - ts)
    const qw = toWall * (meanC - tw)
    gasC -= (qs + qw) / flow
    // water at the surface: towards the humidity of its own temperature (dew point), linearised in the new temperature
    let heatS = solidCp * solidS + waterCp * waterS + organicCp * (heldTar + heldAcid)
    const heatC = solidCp * solidC + waterCp * waterC
    const loose = waterS / (waterS + 0.03 * solidS)
    let vapour = loose * saturationKPa(ts)
    const capped = vapour > 0.97 * airPressureKPa
    if (capped) vapour = 0.97 * airPressureKPa
    const k = dryGas * exchange
    const wetting = k * (humidity(vapour) - steam / dryGas)
    const rest = airPressureKPa - vapour
    const slope = capped ? 0 : (k * 0.622 * airPressureKPa * vapour * saturationSlope(ts)) / (rest * rest)
    const latent = latentKJ(ts)
    const pull = qs + toCore * (tc - ts) + touch * (tw - ts)
    const a12 = -dt * toCore
    const a22 = heatC + dt * toCore
    const r2 = -dt * toCore * (tc - ts)
    let a11 = heatS + dt * (latent * slope + toCore)
    let r1 = dt * (pull - latent * wetting)
    let rise = (r1 * a22 - a12 * r2) / (a11 * a22 - a12 * a12)
    let off = wetting + slope * rise
    const most = waterS / dt
    const least = -0.98 * steam
    if (off > most || off < least) {
      off = off > most ? most : least
      a11 = heatS + dt * toCore
      r1 = dt * (pull - latent * off)
      rise = (r1 * a22 - a12 * r2) / (a11 * a22 - a12 * a12)
    }
    const riseC = (r2 - a12 * rise) / a22
    // the water that comes or goes does so at the old surface temperature
    const carried = waterCp * off * dt
    ts = ts + rise * (heatS / (heatS - carried > 0.2 * heatS ? heatS - carried : 0.2 * heatS))
    tc += riseC
    waterS -= off * dt
    // acids: the gas and the water on the wood come to terms, so wet wood washes the acids out until it is sour or dry
    const full = capped ? vapour : Math.min(0.97 * airPressureKPa, vapour / (loose + 1e-9))
    const sour = heldAcid / (waterS + 0.03 * solidS + heldAcid)
    let acidOff = k * (acidVolatility * sour * humidity(full) - acid / dryGas)
    if (acidOff * dt > heldAcid) acidOff = heldAcid / dt
    else if (acidOff < -0.95 * acid) acidOff = -0.95 * acid
    // tar: what the gas can carry at the wood's temperature
    const can = Math.exp((ts - tarBoils) / tarSlopeK) * (heldTar / (heldTar + 0.001 * solidS + 1e-9))
    let tarOff = k * (can - tar / dryGas)
    if (tarOff * dt > heldTar) tarOff = heldTar / dt
    else if (tarOff < -0.95 * tar) tarOff = -0.95 * tar
    const back = flow + steamCp * off + organicCp * (acidOff + tarOff) || 1e-9
    gasC = (gasC * flow + (steamCp * off + organicCp * (acidOff + tarOff)) * (x[b + L.surfaceC] as number)) / back
    heldAcid -= acidOff * dt
    heldTar -= tarOff * dt
    steam += off
    acid += acidOff
    tar += tarOff
    flow = back
    // boiling in the core, bound water later
    if (waterC > 0) {
      const boilsC = 99 + 25 * (0.05 / (waterC / solidC + 0.05))
      if (tc > boilsC) {
        const lam = latentKJ(tc)
        let gone = (((tc - boilsC) * heatC) / lam) * boil
        if (gone > waterC) gone = waterC
        tc -= (gone * lam) / (heatC - waterCp * gone > 0.1 ? heatC - waterCp * gone : 0.1)
        waterC -= gone
        gasC = (gasC * flow + ((steamCp * gone) / dt) * tc) / (flow + (steamCp * gone) / dt)
        flow += (steamCp * gone) / dt
        steam += gone / dt
      }
      // water creeps outwards
      const creep = (waterC / solidC - waterS / solidS) * solidC * 0.5 * seep
      if (creep > 0) {
        const hs = solidCp * solidS + waterCp * waterS + organicCp * (heldTar + heldAcid)
        ts = (ts * hs + waterCp * creep * tc) / (hs + waterCp * creep)
        waterC -= creep
        waterS += creep
      }
    }
    // breakdown of surface and core
    let newMist = 0
    breakDown(x, sp, b + L.surfaceChar, ts + shift, dt, acidYield, tarYield, given)
    heatS = solidCp * solidS + waterCp * waterS
    if ((given[4] as number) > 0) {
      ts += (heat * (given[4] as number)) / heatS
      const g = (given[3] as number) / dt
      const w = (given[0] as number) / dt
      const c = ((given[1] as number) + (given[2] as number)) / dt
      gasC = (gasC * flow + (gasCp * g + steamCp * w + organicCp * c) * ts) / (flow + gasCp * g + steamCp * w + organicCp * c)
      flow += gasCp * g + steamCp * w + organicCp * c
      dryGas += g
      steam += w
      acid += (given[1] as number) / dt
      newMist += (given[2] as number) / dt
      if (books)
        books.heatMade +=
          heat * (given[4] as number) +
          (given[0] as number) * (steamAtZeroKJ + (steamCp - solidCp) * ts) +
          (given[3] as number) * (gasCp - solidCp) * ts
    }
    breakDown(x, cp, b + L.coreChar, tc + shift, dt, acidYield, tarYield, given)
    if ((given[4] as number) > 0) {
      tc += (heat * (given[4] as number)) / (solidCp * solidC + waterCp * waterC)
      const g = (given[3] as number) / dt
      const w = (given[0] as number) / dt
      const c = ((given[1] as number) + (given[2] as number)) / dt
      gasC = (gasC * flow + (gasCp * g + steamCp * w + organicCp * c) * tc) / (flow + gasCp * g + steamCp * w + organicCp * c)
      dryGas += g
      steam += w
      acid += (given[1] as number) / dt
      newMist += (given[2] as number) / dt
      if (books)
        books.heatMade +=
          heat * (given[4] as number) +
          (given[0] as number) * (steamAtZeroKJ + (steamCp - solidCp) * tc) +
          (given[3] as number) * (gasCp - solidCp) * tc
    }
    mist += newMist * mistShare
    tar += newMist * (1 - mistShare)
    // wall and earth
    const out = toEarth * (tw - te)
    const lost = toAir * (te - amb)
    x[b + L.wallC] = tw + (dt * (qw - touch * (tw - (x[b + L.surfaceC] as number)) - out)) / wallHeat
    x[b + L.earthC] = te + (dt * (out - lost)) / earthHeat
    if (books) books.heatLost += lost * dt
    x[b + L.surfaceC] = ts
    x[b + L.coreC] = tc
    x[b + L.surfaceWater] = waterS
    x[b + L.coreWater] = waterC
    x[b + L.heldTar] = heldTar
    x[b + L.heldAcid] = heldAcid
    const near = 1 - Math.abs(place - z)
    const weight = near > 0 ? near : (z === 0 && place < 0) || (z === n - 1 && place > n - 1) ? 1 : 0
    if (weight > 0) {
      const seen = p[q + at.probeGas] as number
      probeWall += weight * ((1 - seen) * (x[b + L.wallC] as number) + seen * gasMeanC)
      probeWeight += weight
    }
  }
  if (books) {
    books.waterOut += steam * dt
    books.acidOut += acid * dt
    books.tarOut += (tar + mist) * dt
    books.gasOut += (dryGas - gas) * dt
    books.heatOut += (dryGas * gasCp * gasC + steam * (steamAtZeroKJ + steamCp * gasC) + (acid + tar + mist) * organicCp * gasC) * dt
  }
  const smoke = amb + (1 - (p[q + at.chimneyLoss] as number)) * (gasC - amb)
  x[o + L.smokeC] = smoke
  const outletC = drive.outletC < smoke ? drive.outletC : smoke
  const left = dryGas * humidity(Math.min(0.97 * airPressureKPa, saturationKPa(outletC < 99 ? outletC : 99)))
  const water = steam > left ? steam - left : 0
  // the outlet's mean hides colder patches of the pipe: something always drips
  const caught = Math.max(leastCaught, water / (steam + 1e-12))
  const waterCaught = steam * caught
  const acidCaught = acid * caught
  const tarCaught = (tar + mist) * Math.sqrt(caught)
  const f = dt / (dt + meanS)
  x[o + L.meanWater] = (x[o + L.meanWater] as number) + f * (waterCaught - (x[o + L.meanWater] as number))
  x[o + L.meanAcid] = (x[o + L.meanAcid] as number) + f * (acidCaught - (x[o + L.meanAcid] as number))
  x[o + L.meanTar] = (x[o + L.meanTar] as number) + f * (tarCaught - (x[o + L.meanTar] as number))
  x[o + L.condensate] = (x[o + L.condensate] as number) + (waterCaught + acidCaught + tarCaught) * dt
  x[o + L.smokeProbeC] = (x[o + L.smokeProbeC] as number) + (dt / (dt + smokeLagS)) * (smoke - (x[o + L.smokeProbeC] as number))
  x[o + L.wallProbeC] =
    (x[o + L.wallProbeC] as number) + (dt / (dt + wallLagS)) * (probeWall / probeWeight - (x[o + L.wallProbeC] as number))
}
