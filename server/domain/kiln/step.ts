import { exp } from './exp.ts'
import * as L from './layout.ts'
import { partShares } from './kinetics.ts'
import { at, coreConductanceAt, coreShareAt, dryKgAt, waterKgAt } from './parameters.ts'
import { humidity, saturationKPa, steamAtZeroKJ, steamCp } from './water.ts'
import {
  atAcid,
  atAcidVolatility,
  atAcidYield,
  atAmb,
  atBoil,
  atBoth,
  atDryGas,
  atDtPerEarthHeat,
  atDtPerWallHeat,
  atExchange,
  atGasC,
  atHeat,
  atMist,
  atMistShare,
  atPerBoth,
  atPerDt,
  atPlace,
  atProbeWall,
  atProbeWeight,
  atSeconds,
  atSeen,
  atSeep,
  atShift,
  atSteam,
  atTar,
  atTarBoils,
  atTarYield,
  atToAir,
  atToCore,
  atToEarth,
  atToWall,
  atToWood,
  atTouch,
  gasCp,
  mostVapourKPa,
  organicCp,
  zone,
  type Books,
} from './zone.ts'

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

export const steelHeat = 32 // kJ/K: 20 kg of drum and the first centimetre of earth (trade facts 9.2.10, 9.2.12)
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

/** One step of one kiln: state `x` from `o`, physical values `p` from `q`. `m` is a bench of `benchLength` numbers to work on. */
export function step(x: Float64Array, o: number, p: Float64Array, q: number, drive: Drive, m: Float64Array, books?: Books): void {
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
  m[atAcid] = 0
  m[atTar] = 0
  m[atMist] = 0
  m[atDryGas] = gas
  const toWood = (p[q + at.gasToWood] as number) / n
  const toWall = (p[q + at.gasToWall] as number) / n
  const both = toWood + toWall
  m[atPerBoth] = 1 / both
  m[atPerDt] = 1 / dt
  m[atTouch] = (p[q + at.woodToWall] as number) / n
  m[atToEarth] = (p[q + at.wallToEarth] as number) / n
  m[atToAir] = (p[q + at.earthToAir] as number) / n
  m[atDtPerEarthHeat] = (dt * n) / (p[q + at.earthHeat] as number)
  m[atDtPerWallHeat] = (dt * n) / steelHeat
  m[atToCore] = (p[q + coreConductanceAt] as number) / n
  m[atSeep] = dt / (dt + 9000 * (p[q + at.piece] as number) * (p[q + at.piece] as number))
  m[atBoil] = dt / (dt + 40)
  m[atShift] = p[q + at.kinetics] as number
  m[atHeat] = p[q + at.breakdownHeat] as number
  m[atTarBoils] = p[q + at.tarBoils] as number
  m[atMistShare] = p[q + at.mist] as number
  m[atAcidVolatility] = p[q + at.acidVolatility] as number
  m[atSeen] = p[q + at.probeGas] as number
  m[atExchange] = 1 - exp(-toWood / (gas * gasCp))
  m[atPlace] = (p[q + at.probePlace] as number) * n - 0.5
  m[atProbeWall] = 0
  m[atProbeWeight] = 0
  if (books) {
    books.waterIn += steam * dt
    books.heatIn += (gas * gasCp * gasC + steam * (steamAtZeroKJ + steamCp * gasC)) * dt
  }
  m[atSeconds] = dt
  m[atAcidYield] = p[q + at.acidYield] as number
  m[atTarYield] = p[q + at.tarYield] as number
  m[atToWood] = toWood
  m[atToWall] = toWall
  m[atBoth] = both
  m[atAmb] = amb
  m[atGasC] = gasC
  m[atSteam] = steam
  for (let z = 0; z < n; z++) zone(x, o + z * L.zoneStride, z, m, books)
  gasC = m[atGasC] as number
  const dryGas = m[atDryGas] as number
  steam = m[atSteam] as number
  const acid = m[atAcid] as number
  const tar = m[atTar] as number
  const mist = m[atMist] as number
  const probeWall = m[atProbeWall] as number
  const probeWeight = m[atProbeWeight] as number
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
  const left = dryGas * humidity(Math.min(mostVapourKPa, saturationKPa(outletC < 99 ? outletC : 99)))
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
