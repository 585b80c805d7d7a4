import type { Course } from './course.ts'
import { gridS } from './course.ts'

type Span = [from: number, to: number]

/** What was really in the pipe and what a perfect person could have done. Seconds after lighting; kg. */
export interface Truth {
  /** [good, watery, tarry] kg caught in each minute from lighting to sealing. */
  minutes: [good: number, watery: number, tarry: number][]
  best: { from: number | null; to: number | null; value: number; goodKg: number }
  sealDue: number | null
  sealed: number
  charcoalKg: number
  dryWoodKg: number
  hottestBelow: Record<'45' | '50' | '60' | '80', number | null>
  incidents: { condenserDry: Span[]; condenserDryish: Span[]; fireDying: Span[]; airLeak: Span[] }
}

// the classes of the-job.md: shares of the condensate of the moment, averages over about eight minutes
const waterySour = 0.03
const tarryTar = 0.14
const averageS = 480

export type DripClass = 'good' | 'watery' | 'tarry'

/** Shares and class on the grid; null where nothing drips. */
export function dripClasses(c: Course): { kgS: number; acid: number; tar: number; is: DripClass | null }[] {
  const n = c.dripWater.length
  const sums = [c.dripWater, c.dripAcid, c.dripTar].map((column) => {
    const sum = new Float64Array(n + 1)
    for (let i = 0; i < n; i++) sum[i + 1] = sum[i]! + column[i]!
    return sum
  })
  const half = averageS / gridS / 2
  return c.dripWater.map((water, i) => {
    const [w, a, t] = sums.map((sum) => sum[Math.min(n, i + half)]! - sum[Math.max(0, i - half)]!) as [number, number, number]
    const all = w + a + t
    const kgS = water + c.dripAcid[i]! + c.dripTar[i]!
    if (all < 1e-9) return { kgS, acid: 0, tar: 0, is: null }
    return { kgS, acid: a / all, tar: t / all, is: t / all > tarryTar ? 'tarry' : a / all < waterySour ? 'watery' : 'good' }
  })
}

export function tellTruth(c: Course): Truth {
  const classes = dripClasses(c)
  const until = Math.min(classes.length, Math.ceil(c.sealedS / gridS))
  const minutes: Truth['minutes'] = []
  for (let m = 0; m * 60 < c.sealedS; m++) minutes.push([0, 0, 0])
  // the stretch of the greatest sum is the best window
  let run = 0
  let runFrom = 0
  const best = { from: 0, to: 0, value: 0 }
  for (let i = 0; i < until; i++) {
    const { is, kgS } = classes[i]!
    const kg = kgS * gridS
    const row = minutes[Math.floor((i * gridS) / 60)]
    if (row && is) row[is === 'good' ? 0 : is === 'watery' ? 1 : 2] += kg
    if (run <= 0) {
      run = 0
      runFrom = i
    }
    run += is === 'good' ? kg : is === 'tarry' ? -2 * kg : is === 'watery' ? -0.25 * kg : 0
    if (run > best.value) Object.assign(best, { from: runFrom, to: i + 1, value: run })
  }
  let goodKg = 0
  for (let i = best.from; i < best.to; i++) if (classes[i]!.is === 'good') goodKg += classes[i]!.kgS * gridS
  const any = best.value > 0.3
  return {
    minutes,
    best: {
      from: any ? best.from * gridS : null,
      to: any ? best.to * gridS : null,
      value: any ? best.value : 0,
      goodKg: any ? goodKg : 0,
    },
    sealDue: c.sealDueS,
    sealed: c.sealedS,
    charcoalKg: c.charcoalKg,
    dryWoodKg: c.dryWoodKg,
    hottestBelow: { 45: staysBelow(c, 45), 50: staysBelow(c, 50), 60: staysBelow(c, 60), 80: staysBelow(c, 80) },
    incidents: {
      ...dryCloths(c, until),
      fireDying: fireDying(c, until),
      airLeak: c.leakFromS !== null && c.leakFromS < c.mouth.length * gridS ? [[c.leakFromS, c.mouth.length * gridS]] : [],
    },
  }
}

/** From when the hottest part stays under a limit; null when it does not before the end. */
function staysBelow(c: Course, limitC: number): number | null {
  let i = c.hottest.length
  while (i > 0 && c.hottest[i - 1]! < limitC) i--
  return i === c.hottest.length ? null : Math.max(c.sealedS, i * gridS)
}

function spans(n: number, is: (i: number) => boolean): Span[] {
  const found: Span[] = []
  let from = -1
  for (let i = 0; i <= n; i++) {
    const on = i < n && is(i)
    if (on && from < 0) from = i
    if (!on && from >= 0) {
      found.push([from * gridS, i * gridS])
      from = -1
    }
  }
  return found
}

/** Cloths that no longer cool while vapour comes: shortly before every wetting, and for long when they are forgotten. */
function dryCloths(c: Course, until: number): { condenserDry: Span[]; condenserDryish: Span[] } {
  const first = c.deeds.find((d) => d.deed === 'wet-condenser')?.atS ?? Infinity
  const dryish = spans(until, (i) => i * gridS > first && c.cloth[i]! < 0.5 && c.dripWater[i]! + c.dripTar[i]! > 1e-5)
  const warm = ([from, to]: Span) => c.outlet.slice(from / gridS, to / gridS).some((t) => t > 50)
  return { condenserDryish: dryish, condenserDry: dryish.filter((s) => s[1] - s[0] > 1200 && warm(s)) }
}

/** From a mouth under 350 °C after it was hot, until it is fed back or the kiln is sealed; once nobody means to feed it, it may go out. */
function fireDying(c: Course, until: number): Span[] {
  let hot = false
  const is: boolean[] = []
  const left = c.deeds.find((d) => d.deed === 'stop-feeding')?.atS ?? Infinity
  for (let i = 0; i < until && i * gridS < left; i++) {
    hot ||= c.mouth[i]! > 450
    is.push(hot && c.mouth[i]! < 350)
  }
  return spans(until, (i) => is[i] ?? false)
}
