import type { Chance } from '../chance.ts'
import type { FirePlan } from '../kiln/fire.ts'
import type { PipePlan } from '../kiln/pipe.ts'
import type { BedPlan } from '../kiln/plan.ts'
import type { LumpedScheme } from '../kiln/tables/kinetics.ts'

export const families = ['zones', 'pieces'] as const
export type Family = (typeof families)[number]

/** What chance may choose; of these an ordinary firing is the most usual. */
const drawn = ['ordinary', 'fire-dies', 'cloths-neglected', 'rain', 'leaky-seal', 'never-catches'] as const
/** `let-run` comes only on demand: the fire is left alone once the charge breaks down, and the air is narrowed. */
export const kinds = [...drawn, 'let-run'] as const
export type Kind = (typeof kinds)[number]

/** Times in hours after lighting. */
export interface HandsPlan {
  /** Mean minutes between two logs on the fire, and between two wettings. */
  feedEveryMin: number
  wetEveryMin: number
  wetFromH: number
  neglectFire: [fromH: number, toH: number] | null
  neglectCloths: [fromH: number, toH: number] | null
  sealAfterDueMin: number
  /** Whoever sits there seals at last, done or not. */
  sealAtLatestH: number
  leakFromSealH: number | null
  /** Share of the charge broken down at which feeding stops; null where the fire is kept. */
  letRunFromShare: number | null
  leakKgS: number
  logsFuelAndCloths: boolean
  logsLooks: boolean
}

export interface AirPlan {
  meanC: number
  swingK: number
  warmestHour: number
  rain: [fromH: number, toH: number] | null
  gusts: number
}

export interface ProbePlan {
  wallPlace: number
  /** 1 touches the steel, 0 lies in the earth beside it. */
  wallContact: number
  mouthShare: number
  smokeShare: number
  lagS: { firebox: number; wall: number; outlet: number; smoke: number }
  noiseK: number
  smoke: boolean
  ambient: boolean
  core: boolean
  converter: 'max31855' | 'max31855-raw' | 'max31856'
  outletChip: 'thermocouple' | 'ds18b20'
  lsb: number
  clock: 'none' | 'ntp'
  /** Probability of a wild single reading. */
  spikes: number
  /** From when a connection is loose, hours after lighting. */
  openFrom: number | null
  /** The node is out of reach; `kept` when it sends later what it measured meanwhile. */
  lost: { fromH: number; toH: number; kept: boolean } | null
  offsetK: { firebox: number; wall: number; outlet: number; smoke: number; ambient: number; core: number }
  /** Recording starts so long before the lighting. */
  leadS: number
}

export interface WorldPlan {
  seed: string
  family: Family
  kind: Kind
  bed: BedPlan
  scheme: LumpedScheme
  fire: FirePlan
  pipe: PipePlan
  hands: HandsPlan
  air: AirPlan
  probes: ProbePlan
  /** What the person wrote down before lighting; missing when nothing was. */
  record: { massKg: number; moisturePct: number; pieceMm: number } | null
  /** The run ends when its hottest part is below this, eight hours after sealing at the soonest, °C. */
  coldC: number
}

/** One kiln, charge, person and day, all from the seed. `kind` and `family` may be prescribed. */
export function planWorld(chance: Chance, seed: string, wish: { family?: Family; kind?: Kind } = {}): WorldPlan {
  const family = wish.family ?? chance.branch('family').pick(families)
  const kind =
    wish.kind ?? chance.branch('kind').pick(['ordinary', 'ordinary', 'ordinary', 'ordinary', 'ordinary', 'ordinary', 'ordinary', ...drawn])
  const air = planAir(chance.branch('air'), kind)
  const bed = planBed(chance.branch('bed'), kind, air)
  const fire = planFire(chance.branch('fire'), bed, kind)
  const record = chance.branch('record')
  const massKg = bed.charge.dryKg * (1 + bed.charge.moistureDb)
  return {
    seed,
    family,
    kind,
    bed,
    scheme: chance.branch('scheme').pick(['di-blasi', 'di-blasi', 'chan', 'thurner-mann']),
    fire,
    pipe: planPipe(chance.branch('pipe')),
    hands: planHands(chance.branch('hands'), kind),
    air,
    probes: planProbes(chance.branch('probes')),
    coldC: 36,
    record: record.often(0.15)
      ? null
      : {
          massKg: Math.round(massKg * (1 + 0.03 * record.normal()) * 10) / 10,
          // a squeeze and a guess: three points either way
          moisturePct: Math.round((100 * bed.charge.moistureDb) / (1 + bed.charge.moistureDb) + 3 * record.normal()),
          pieceMm: Math.round(bed.charge.pieceM * 100 + 0.5 * record.normal()) * 10,
        },
  }
}

function planAir(chance: Chance, kind: Kind): AirPlan {
  const from = chance.between(2, 6)
  return {
    meanC: chance.between(11, 29),
    swingK: chance.between(2, 7),
    warmestHour: chance.between(7, 10),
    rain: kind === 'rain' ? [from, from + chance.between(1, 4)] : null,
    gusts: chance.between(0.02, 0.12),
  }
}

function planBed(chance: Chance, kind: Kind, air: AirPlan): BedPlan {
  const wetBasis = kind === 'never-catches' ? chance.between(0.35, 0.46) : chance.between(0.11, 0.42)
  const dryKg = Math.min(82, Math.max(38, 60 + 10 * chance.normal()))
  const cellulose = chance.between(0.4, 0.5)
  const hemicellulose = chance.between(0.22, 0.33)
  const startC = air.meanC - air.swingK * 0.6
  return {
    charge: {
      dryKg,
      moistureDb: wetBasis / (1 - wetBasis),
      pieceM: chance.between(0.03, 0.1),
      shares: [cellulose, hemicellulose, 1 - cellulose - hemicellulose],
      startC,
    },
    cover: {
      layersM: [0.012, 0.02, 0.03, chance.between(0.015, 0.07)],
      earthWmK: chance.between(0.45, 1.3),
      earthKJm3K: chance.between(1400, 2600),
    },
    earthStartC: startC,
    gasToWoodKWK: chance.between(0.04, 0.11),
    woodToWallWm2K: chance.between(4, 11),
    gasToWallWm2K: chance.between(1, 4),
    alongKWK: chance.between(0.0006, 0.002),
    fireToFrontKWK: chance.between(0.0005, 0.003),
    charHeat: chance.between(700, 1200),
    volatileHeat: chance.between(150, 330),
    mistHeld: chance.between(0.3, 0.75),
    tarDewShiftK: chance.between(-20, 20),
    acidVolatility: chance.between(0.55, 0.85),
    acidExchange: chance.between(0.4, 1.5),
    tarToChar: chance.between(0.3, 1.2),
    bypass: chance.between(0, 0.15),
    embersC: kind === 'let-run' ? chance.branch('embers').between(620, 800) : null,
    yields: {
      acidPeak: chance.between(0.13, 0.21),
      acidAtC: chance.between(255, 285),
      tarFromC: chance.between(280, 320),
      tarHeight: chance.between(0.17, 0.3),
    },
  }
}

function planFire(chance: Chance, bed: BedPlan, kind: Kind): FirePlan {
  // fire and draught go with the size of the charge, by feel
  const wanted = chance.between(0.68, 1.25) * (bed.charge.dryKg / 57) * (0.7 + 0.6 * bed.charge.moistureDb)
  const targetC = chance.between(540, 780)
  return {
    targetC,
    draughtKgS: (kind === 'never-catches' ? chance.between(0.4, 0.7) : 1) * ((wanted * 5.4) / (1.08 * (targetC - 65))),
    burnDownS: chance.between(1300, 2400),
    inertiaS: chance.between(400, 900),
    fuelKJkg: chance.between(9000, 13000),
    airShare: chance.between(0.005, 0.05),
  }
}

function planPipe(chance: Chance): PipePlan {
  return {
    wetKWK: chance.between(0.06, 0.2),
    dryKWK: chance.between(0.008, 0.018),
    clothKg: chance.between(0.4, 1.5),
    wetBulbK: chance.between(2, 6),
    mistCaught: chance.between(0.6, 0.95),
    riserKWK: chance.between(0.0008, 0.004),
  }
}

function planHands(chance: Chance, kind: Kind): HandsPlan {
  const diesAt = kind === 'never-catches' ? chance.between(0.8, 2) : chance.between(1.2, 4)
  const clothsAt = chance.between(2.5, 5)
  return {
    feedEveryMin: chance.between(9, 18),
    wetEveryMin: chance.between(8, 18),
    wetFromH: chance.between(0.8, 2),
    neglectFire:
      kind === 'fire-dies'
        ? [diesAt, diesAt + chance.between(0.8, 1.8)]
        : kind === 'never-catches' && chance.often(0.6)
          ? [diesAt, 99]
          : null,
    neglectCloths: kind === 'cloths-neglected' ? [clothsAt, clothsAt + chance.between(0.6, 2)] : null,
    sealAfterDueMin: chance.between(0, 25),
    sealAtLatestH: kind === 'never-catches' ? chance.between(4.5, 7) : chance.between(14.5, 15.5),
    letRunFromShare: kind === 'let-run' ? 0.1 : null,
    leakFromSealH: kind === 'leaky-seal' ? chance.between(0.3, 3) : null,
    leakKgS: chance.between(0.00003, 0.00025),
    logsFuelAndCloths: chance.often(0.4),
    logsLooks: chance.often(0.3),
  }
}

function planProbes(chance: Chance): ProbePlan {
  const lostAt = chance.between(1, 8)
  const converter = chance.pick(['max31855', 'max31855-raw', 'max31856', 'max31856'] as const)
  return {
    wallPlace: chance.between(0.12, 0.75),
    wallContact: chance.between(0.45, 1),
    mouthShare: chance.between(0.85, 1),
    smokeShare: chance.between(0.93, 1),
    lagS: { firebox: chance.between(20, 80), wall: chance.between(20, 120), outlet: chance.between(10, 90), smoke: chance.between(10, 80) },
    noiseK: chance.between(0.3, 1.4),
    smoke: chance.often(0.45),
    ambient: chance.often(0.45),
    core: chance.often(0.05),
    converter,
    outletChip: chance.often(0.5) ? 'ds18b20' : 'thermocouple',
    lsb: converter === 'max31855' || converter === 'max31855-raw' ? 0.25 : chance.pick([0.0625, 0.25]),
    clock: chance.often(0.5) ? 'ntp' : 'none',
    spikes: chance.often(0.5) ? chance.between(0.0002, 0.002) : 0,
    openFrom: chance.often(0.15) ? chance.between(1, 9) : null,
    lost: chance.often(0.12) ? { fromH: lostAt, toH: lostAt + chance.between(0.05, 0.8), kept: chance.often(0.6) } : null,
    offsetK: {
      firebox: 3 * chance.normal(),
      wall: 1.5 * chance.normal(),
      outlet: 0.7 * chance.normal(),
      smoke: 1 * chance.normal(),
      ambient: 0.4 * chance.normal(),
      core: 1.5 * chance.normal(),
    },
    leadS: chance.whole(45, 150) * 10,
  }
}
