import { gridS } from '../../../server/simulator/firing/course.ts'
import { actsOf } from '../../../server/simulator/firing/recording.ts'
import { type Firing, makeFiring } from '../../../server/simulator/firing/world.ts'
import { Chance } from '../../../server/simulator/chance.ts'
import type { Simulated } from './lessons.ts'
import { burnPlain } from './plain/world.ts'

const drips = ['none', 'clear', 'pale', 'amber', 'dark', 'black']
const smokes = ['none', 'white', 'yellow', 'blue', 'clear']
const perMinute = 60 / gridS

/** Middle of the newest nine readings, then the mean of each minute, as the live grid makes them; a silent stretch keeps the last value. */
function minutesOf(values: readonly unknown[], fate: ArrayLike<number>): number[] {
  const recent: number[] = []
  const out: number[] = []
  let sum = 0
  let last = 20
  values.forEach((value, i) => {
    if (typeof value === 'number' && fate[i] === 0) {
      recent.push(value)
      if (recent.length > 9) recent.shift()
      last = [...recent].sort((a, b) => a - b)[Math.floor(recent.length / 2)] ?? last
    }
    sum += last
    if (i % perMinute === perMinute - 1) {
      out.push(sum / perMinute)
      sum = 0
    }
  })
  return out
}

/** A firing of the simulator's two families as minutes for the learner. */
export function fromWorld(seed: string): Simulated {
  const firing: Firing = makeFiring(seed, { untilSealed: true })
  const { sampled, course, truth } = firing
  const lead = Math.floor(-sampled.fromS / 60)
  const skip = (-sampled.fromS / gridS) % perMinute
  const minutes = Math.min(truth.minutes.length, 16 * 60)
  const column = (name: string): number[] => {
    const found = sampled.channels.find((channel) => channel.name === name)
    return found ? minutesOf(found.values.slice(skip), sampled.fate.slice(skip)).slice(0, lead + minutes) : []
  }
  const trueSmoke = minutesOf([...Array<number>(lead * perMinute).fill(course.smoke[0] ?? 20), ...course.smoke], new Uint8Array(1e5))
  const length = lead + minutes
  const fed = Array<boolean>(length).fill(false)
  const wetted = Array<boolean>(length).fill(false)
  const seen: Simulated['seen'] = []
  for (const { atS, act } of actsOf(firing)) {
    const minute = Math.floor(atS / 60) + lead
    if (minute < 0 || minute >= length) continue
    if (act.action === 'refuel') fed[minute] = true
    if (act.action === 'wet-condenser') wetted[minute] = true
    if (act.action === 'observe')
      seen.push({ minute, drip: Math.max(drips.indexOf(act.drip ?? 'none'), 0), smoke: Math.max(smokes.indexOf(act.smoke ?? 'none'), 0) })
  }
  const { from, to, value } = truth.best
  return {
    leadMinutes: lead,
    fireboxC: column('firebox'),
    wallC: column('wall'),
    outletC: column('outlet'),
    smokeC: trueSmoke.slice(0, length),
    fed,
    wetted,
    seen,
    charge: firing.plan.record ?? null,
    truth: truth.minutes,
    best: from === null || to === null ? null : { fromMinute: from / 60, toMinute: to / 60, value },
    sealMinute: truth.sealDue === null ? null : truth.sealDue / 60,
  }
}

/** Value of each minute, and the stretch of the greatest sum. */
function bestOf(truth: readonly (readonly [number, number, number])[]): Simulated['best'] {
  let run = 0
  let from = 0
  let best: Simulated['best'] = null
  truth.forEach(([good, watery, tarry], i) => {
    if (run <= 0) {
      run = 0
      from = i
    }
    run += good - 2 * tarry - 0.25 * watery
    if (run > (best?.value ?? 0)) best = { fromMinute: from, toMinute: i + 1, value: run }
  })
  return best
}

/** A plain firing as minutes for the learner; null where it is not like any published one (trade facts 1.2, 2: windows at 50-95 and 95-205 °C of smoke). */
export function fromPlain(seed: string): Simulated | null {
  const firing = burnPlain(seed)
  const chance = new Chance(`plain/${seed}/seen`)
  const { drip, leadMinutes } = firing
  const mean = (i: number, c: number): number => {
    let part = 0
    let all = 1e-9
    for (let k = Math.max(0, i - 7); k <= i; k++) {
      part += drip[k]?.[c] ?? 0
      all += (drip[k] ?? []).reduce((a, b) => a + b, 0)
    }
    return part / all
  }
  const classes = drip.map((kg, i) => {
    const all = kg[0] + kg[1] + kg[2]
    const tarry = mean(i, 2) > 0.14
    const watery = !tarry && mean(i, 1) < 0.03
    return [tarry || watery ? 0 : all, watery ? all : 0, tarry ? all : 0] as const
  })
  const truth = classes.slice(leadMinutes, firing.sealedMinute)
  const best = bestOf(truth)
  if (firing.kiln.kind !== 'never-catches') {
    if (best === null || best.value < 4 || best.toMinute - best.fromMinute < 75) return null
    const middle = (from: number, to: number): number => {
      const part = firing.smokeC.slice(Math.max(0, from), to).sort((a, b) => a - b)
      return part[Math.floor(part.length / 2)] ?? 0
    }
    const start = middle(best.fromMinute + leadMinutes, best.fromMinute + leadMinutes + 10)
    const stop = middle(best.toMinute + leadMinutes - 25, best.toMinute + leadMinutes)
    const totals = [0, 1, 2].map((c) => truth.reduce((sum, minute) => sum + (minute[c] ?? 0), 0))
    const [good = 0, , tarry = 0] = totals
    if (start < 48 || start > 95 || stop < 95 || stop > 205 || tarry < 0.15 * good || best.value < 0.55 * good) return null
  }
  const charredAt = firing.charred.findIndex((share) => share > firing.kiln.charredShare)
  const noisy = (values: number[], sd: number) =>
    values.slice(0, firing.sealedMinute).map((v) => Math.round((v + sd * chance.normal()) * 4) / 4)
  return {
    leadMinutes,
    fireboxC: noisy(firing.fireboxC, 2),
    wallC: noisy(firing.wallC, 0.7),
    outletC: noisy(firing.outletC, 0.3),
    smokeC: firing.smokeC,
    fed: firing.fed,
    wetted: firing.wetted,
    seen: seenOf(firing, mean, chance),
    charge: {
      massKg: firing.kiln.massKg * Math.exp(0.04 * chance.normal()),
      moisturePct: Math.min(Math.max(100 * firing.kiln.moisture + 3.5 * chance.normal(), 3), 60),
      pieceMm: firing.kiln.pieceMm,
    },
    truth,
    best,
    sealMinute: charredAt < 0 ? null : charredAt - leadMinutes,
  }
}

/** A person looks every half hour or so, and errs by an eighth. */
function seenOf(
  firing: { leadMinutes: number; sealedMinute: number; charred: number[] },
  mean: (i: number, c: number) => number,
  chance: Chance,
) {
  const seen: Simulated['seen'] = []
  const own = [0, 1, 2, 3].map(() => Math.exp(0.12 * chance.normal()))
  for (let i = firing.leadMinutes + chance.whole(20, 60); i < firing.sealedMinute; i += chance.whole(25, 50)) {
    const eye = Math.exp(0.12 * chance.normal())
    const acid = mean(i, 1) * eye
    const tar = mean(i, 2) * eye
    const limits = [0.08, 0.14, 0.24].map((limit, k) => limit * (own[k + 1] ?? 1))
    const drip = tar > (limits[2] ?? 1) ? 5 : tar > (limits[1] ?? 1) ? 4 : tar > (limits[0] ?? 1) ? 3 : acid < 0.03 * (own[0] ?? 1) ? 1 : 2
    const charred = (firing.charred[i] ?? 0) > 0.97
    const smoke = charred ? 4 : drip === 1 || (drip === 2 && acid < 0.05) ? 1 : drip <= 3 ? 2 : 3
    seen.push({ minute: i, drip, smoke })
  }
  return seen
}
