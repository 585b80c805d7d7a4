import type { Act } from '../../../../server/contract/actions.ts'
import type { Checked, EntryProblem } from '../../../../server/contract/entry-problems.ts'
import type { Charge, KilnConfig } from '../../../../server/contract/fold.ts'
import type { Curve, FiringSummary } from '../../../../server/contract/live.ts'
import type { Ledger, Lot, LotEntry, LotEvent } from '../../../../server/contract/lots.ts'
import { admit, foldLedger, nextLotId } from '../../lib/domain.ts'
import { newActId } from '../../lib/live/outbox.svelte.ts'
import { apiAddress, type Place } from '../../lib/place.ts'

interface LotsAnswer {
  entries: LotEntry[]
  today: { date: string; clockSure: boolean }
  offsetMin: number
}

/** Everything that a person typed beside the event itself. */
export interface Told {
  date?: string
  corrects?: string
}

/** The book of lots as this page knows it; made by each view, loaded when it opens. */
export class LotShelf {
  readonly place: Place
  entries = $state.raw<LotEntry[]>([])
  today = $state.raw({ date: '1970-01-01', clockSure: false })
  offsetMin = $state(0)
  state = $state<'loading' | 'ready' | 'offline'>('loading')
  firings = $state.raw<FiringSummary[]>([])

  readonly #folded: Checked<Ledger> = $derived(foldLedger(this.entries))
  readonly ledger: Ledger | null = $derived(this.#folded.ok ? this.#folded.value : null)
  readonly lots: Lot[] = $derived(this.ledger ? [...this.ledger.lots.values()] : [])
  readonly next: string = $derived(this.ledger ? nextLotId(this.ledger) : '1')
  /** Ended firings whose liquid is in no lot yet, the newest first. */
  readonly unbottled: FiringSummary[] = $derived(
    this.firings.filter(
      (firing) => firing.endedAt !== null && !this.lots.some((lot) => lot.kind === 'condensate' && lot.firings.includes(firing.id)),
    ),
  )

  constructor(place: Place) {
    this.place = place
  }

  async load(): Promise<void> {
    try {
      const answer = (await this.#get('lots')) as LotsAnswer
      if (!Array.isArray(answer.entries)) throw new Error('lots: no book')
      this.entries = answer.entries
      this.today = answer.today
      this.offsetMin = answer.offsetMin
      this.state = 'ready'
      const firings = (await this.#get('firings')) as FiringSummary[]
      this.firings = Array.isArray(firings) ? [...firings].sort((a, b) => b.startedAt - a.startedAt) : []
    } catch {
      this.state = this.entries.length > 0 ? 'ready' : 'offline'
    }
  }

  lot(id: string): Lot | null {
    return this.ledger?.lots.get(id) ?? null
  }

  /** @returns what is wrong, empty when it was kept. Tried here first, so that a sentence stands at once. */
  async tell(event: LotEvent, told: Told = {}): Promise<EntryProblem[]> {
    const id = newActId()
    const at = Date.now()
    const date = told.date ?? this.entries.find((one) => one.id === told.corrects)?.date ?? this.today.date
    const entry: LotEntry = { id, at, doneAt: at, date, by: '', clockSure: true, event, ...corrects(told) }
    const tried = admit(this.entries, entry)
    if (!tried.ok) return tried.problems
    const answer = await this.#post('lots/entries', { id, event, ...told })
    if (answer === null) return [{ code: 'no-answer', field: 'service', params: {} }]
    if ('problems' in answer) return answer.problems
    this.entries = [...this.entries, answer]
    return []
  }

  /** Acts and smoke of a firing, for its bottles. */
  async firing(id: string): Promise<{ acts: Act[]; curve: Curve; charge: Charge } | null> {
    try {
      const path = `firings/${encodeURIComponent(id)}`
      const [one, curve] = await Promise.all([this.#get(path), this.#get(`${path}/curve?buckets=2000`)])
      const { acts, config } = one as { acts: Act[]; config: KilnConfig }
      return { acts, curve: curve as Curve, charge: { ...config.charge, ...loadedOf(acts) } }
    } catch {
      return null
    }
  }

  async documents(kind: string): Promise<{ id: string; document: unknown }[]> {
    try {
      return (await this.#get(`documents/${kind}`)) as { id: string; document: unknown }[]
    } catch {
      return []
    }
  }

  async keep(kind: string, id: string, document: unknown): Promise<void> {
    await fetch(apiAddress(this.place, `documents/${kind}/${id}`), json('PUT', document)).catch(() => null)
  }

  codeAddress(lot: string): string {
    return `${apiAddress(this.place, `lots/${encodeURIComponent(lot)}/code`)}?address=${encodeURIComponent(this.place.base.href)}`
  }

  async #get(path: string): Promise<unknown> {
    const answer = await fetch(apiAddress(this.place, path), { headers: { accept: 'application/json' } })
    if (!answer.ok) throw new Error(`${path}: ${String(answer.status)}`)
    return await answer.json()
  }

  async #post(path: string, body: unknown): Promise<LotEntry | { problems: EntryProblem[] } | null> {
    try {
      const answer = await fetch(apiAddress(this.place, path), json('POST', body))
      if (!answer.ok && answer.status !== 422) return null
      const said = (await answer.json()) as LotEntry | { problems: EntryProblem[] }
      return 'problems' in said || 'event' in said ? said : null
    } catch {
      return null
    }
  }
}

/** What was weighed at loading counts before what the kiln's settings assume. */
function loadedOf(acts: readonly Act[]): Charge {
  const load = acts.map(({ act }) => act).findLast((act) => act.action === 'load')
  if (load === undefined) return {}
  return {
    ...(load.massKg === undefined ? {} : { massKg: load.massKg }),
    ...(load.moisturePct === undefined ? {} : { moisturePct: load.moisturePct }),
  }
}

function corrects(told: Told): { corrects?: string } {
  return told.corrects === undefined ? {} : { corrects: told.corrects }
}

function json(method: string, body: unknown): RequestInit {
  return { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) }
}
