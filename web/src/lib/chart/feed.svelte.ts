import type { Ms } from '../../../../server/contract/fold.ts'
import type { Curve, FiringSummary, KilnView } from '../../../../server/contract/live.ts'
import type { Role } from '../../../../server/contract/vocabulary.ts'
import { isSealed } from '../words/sentence.ts'
import type { Api } from '../api/api.ts'

export type SeriesKey = Role | 'smoke-estimated'

/** The service thins; between two fetches the newest readings are hung on here. */
const fetchEveryMs = 120_000
/** Space between two points that are hung on: kiln time at the least, and points in the whole, as fine as the service thins. */
const least = { stepMs: 10_000, points: 1000 }
/** A number that moved so far is hung on sooner: about two pixels of its scale, K. */
const movedK = { firebox: 40, others: 5 }
/** Of the newest firings of the site so many are searched for one of this kiln. */
const lookedThrough = 40

/** The last earlier firing of this kiln, with its whole curve as soon as that is here. */
export interface Ghost {
  summary: FiringSummary
  curve: Curve | null
}

/** The curve of the firing that runs, kept outside of Svelte's proxies. */
export class CurveFeed {
  curve = $state.raw<Curve | null>(null)
  /** For the pale line behind. */
  ghost = $state.raw<Ghost | null>(null)
  failed = $state(false)
  readonly #api: Api
  #firing: string | null = null
  #fetchedAt = -Infinity
  #busy = false

  constructor(api: Api) {
    this.#api = api
  }

  /** Run whenever the kiln changes; asks the service when it is time. */
  follow(kiln: KilnView, now: Ms, counter = performance.now()): void {
    // between two firings the service gives what the probes read since the last one
    const firing = kiln.firing.firing ?? ''
    if (firing !== this.#firing) {
      this.#firing = firing
      this.curve = null
      this.#fetchedAt = -Infinity
      void this.#findGhost(kiln.firing.kiln, firing)
    }
    if (counter - this.#fetchedAt > fetchEveryMs && !this.#busy) void this.#fetch(firing, kiln.firing.kiln, counter)
    else this.#append(kiln, now)
  }

  /** After a cut: the gap is filled from the service. */
  again(): void {
    this.#fetchedAt = -Infinity
  }

  async #fetch(firing: string, kiln: string, counter: number): Promise<void> {
    this.#busy = true
    try {
      const curve = await this.#api.currentCurve(kiln)
      // an answer of another version of the service must not bring the page down
      if (firing === this.#firing && Array.isArray(curve.t) && Array.isArray(curve.series)) this.curve = curve
      this.failed = false
      this.#fetchedAt = counter
    } catch {
      this.failed = true
      // tried again in a quarter of the usual time
      this.#fetchedAt = counter - fetchEveryMs * 0.75
    } finally {
      this.#busy = false
    }
  }

  async #findGhost(kiln: string, firing: string): Promise<void> {
    this.ghost = null
    try {
      const earlier = (await this.#api.firings(lookedThrough)).filter(
        (one) => one.kiln === kiln && one.id !== firing && one.endedAt !== null,
      )
      const summary = earlier.sort((a, b) => b.startedAt - a.startedAt)[0]
      this.ghost = summary ? { summary, curve: null } : null
      if (summary) this.ghost = { summary, curve: await this.#api.curve(summary.id) }
    } catch {
      // without it the small curve of the shelf is drawn, or none
    }
  }

  #append(kiln: KilnView, now: Ms): void {
    const { curve } = this
    const last = curve?.t.at(-1)
    if (!curve || last === undefined || now - last < least.stepMs) return
    // each point draws the whole curve anew: after hours most would move it by less than a pixel
    if (now - last < (now - curve.from) / least.points && !movedFar(curve, kiln)) return
    const series = curve.series.map(({ key, values }) => ({ key, values: [...values, valueOf(kiln, key)] }))
    for (const key of keysOf(kiln))
      if (!series.some((one) => one.key === key)) series.push({ key, values: [...curve.t.map(() => null), valueOf(kiln, key)] })
    this.curve = { ...curve, to: now, t: [...curve.t, now], series }
  }
}

function movedFar(curve: Curve, kiln: KilnView): boolean {
  return keysOf(kiln).some((key) => {
    const before = curve.series.find((one) => one.key === key)?.values.at(-1) ?? null
    const value = valueOf(kiln, key)
    // one that fell silent or came back moved as well
    if (before === null || value === null) return before !== value
    return Math.abs(value - before) > (key === 'firebox' ? movedK.firebox : movedK.others)
  })
}

function keysOf(kiln: KilnView): SeriesKey[] {
  const roles = kiln.channels.filter((channel) => channel.role !== 'bottle' && channel.role !== 'co').map((channel) => channel.role)
  return kiln.estimate && !roles.includes('smoke') ? [...roles, 'smoke-estimated'] : roles
}

function valueOf(kiln: KilnView, key: SeriesKey): number | null {
  if (key === 'smoke-estimated') return isSealed(kiln.firing) ? null : (kiln.estimate?.smokeC ?? null)
  const channel = kiln.channels.find((one) => one.role === key)
  return channel && channel.heard === 'fresh' ? channel.value : null
}
