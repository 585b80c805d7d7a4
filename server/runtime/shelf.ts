import type { Act } from '../contract/actions.ts'
import type { Ms, Output } from '../contract/fold.ts'
import type { FiringTold, PhaseSpan } from '../contract/live.ts'
import type { FiringRecord, Store } from '../storage/store.ts'
import { toldOf } from '../domain/lots/told.ts'
import { actsOfFiring, keepActs } from './acts.ts'
import type { Session } from './session.ts'

const sparkPoints = 60

/** What is written of a firing when it opens, as it goes on, and when it closes. */
export class Shelf {
  private readonly store: Store
  private readonly demo: boolean
  private readonly foldVersion: number

  constructor(store: Store, setup: { demo: boolean; foldVersion: number }) {
    this.store = store
    this.demo = setup.demo
    this.foldVersion = setup.foldVersion
  }

  /** A firing that a recovery opens again is left as it stands. */
  async open(session: Session<unknown>): Promise<void> {
    if (await this.store.firing(session.id)) return
    const { origin, config, id, openedAt } = session
    await this.store.putFiring({
      id,
      kiln: config.kiln,
      kilnName: config.name,
      title: '',
      startedAt: openedAt ?? origin.at,
      endedAt: null,
      demo: this.demo,
      phases: [],
      spark: { t: [], wall: [], smoke: [] },
      originSeq: origin.seq,
      originAt: origin.at,
      endSeq: null,
      config: JSON.stringify(origin.config),
      intake: origin.bytes,
      foldVersion: this.foldVersion,
    })
  }

  /** Brings phases and small curve up to date; with an `end` the firing is closed. */
  async renew(id: string, now: Ms, end: { at: Ms; seq: number } | null): Promise<void> {
    const firing = await this.store.firing(id)
    if (!firing || firing.endSeq !== null) return
    const to = end?.at ?? now
    const renewed: FiringRecord = {
      ...firing,
      endedAt: end?.at ?? null,
      endSeq: end?.seq ?? null,
      phases: spansOf(await this.store.outputs(id, ['phase']), end?.at ?? null),
      spark: await this.spark(firing, to),
    }
    if (end) renewed.told = await this.told(renewed, await keepActs(this.store, renewed), end.at)
    await this.store.putFiring(renewed)
    // drawn now, so that whoever looks first does not wait for it
    if (end) await this.store.wholeCurve(id, firing.originAt, end.at)
  }

  /** A record that ends, with its phases and its small curve. */
  async finished(firing: FiringRecord & { endedAt: Ms }): Promise<FiringRecord> {
    const phases = spansOf(await this.store.outputs(firing.id, ['phase']), firing.endedAt)
    const acts = await actsOfFiring(this.store, firing)
    const told = await this.told({ ...firing, phases }, acts, firing.endedAt)
    return { ...firing, phases, spark: await this.spark(firing, firing.endedAt), told }
  }

  private async told({ id, phases }: FiringRecord, acts: readonly Act[], ended: Ms): Promise<FiringTold> {
    return toldOf(acts, await this.store.outputs(id, ['alarm']), phases, ended)
  }

  private async spark(firing: FiringRecord, to: Ms): Promise<FiringRecord['spark']> {
    const from = firing.startedAt
    const series = await this.store.curve(firing.id, from, Math.max(to, from + 1), sparkPoints)
    const t = Array.from({ length: sparkPoints }, (_, i) => Math.round(from + ((to - from) * i) / (sparkPoints - 1)))
    const line = (...roles: string[]) => {
      const found = roles.map((role) => series.find((one) => one.role === role)).find((one) => one !== undefined)
      return t.map((at) => (found ? rounded(valueAt(found, at, (2 * (to - from)) / sparkPoints)) : null))
    }
    return { t, wall: line('wall'), smoke: line('smoke', 'smoke-estimated') }
  }
}

/** The phases told, as stretches without holes. */
export function spansOf(outputs: readonly Output[], end: Ms | null): PhaseSpan[] {
  const spans: PhaseSpan[] = []
  for (const output of outputs) {
    if (output.kind !== 'phase') continue
    const last = spans.at(-1)
    if (last) last.to = output.at
    spans.push({ phase: output.phase, from: output.at, to: null })
  }
  const last = spans.at(-1)
  if (last) last.to = end
  return spans
}

/** A small picture needs no more; thousands of them go over the yard's network. */
const rounded = (value: number | null): number | null => (value === null ? null : Math.round(value))

/** The last value at or before `at` that is not older than `withinMs`. */
function valueAt(series: { t: Ms[]; value: (number | null)[] }, at: Ms, withinMs: Ms): number | null {
  const index = series.t.findLastIndex((t) => t <= at)
  const t = series.t[index]
  return t === undefined || at - t > withinMs ? null : (series.value[index] ?? null)
}
