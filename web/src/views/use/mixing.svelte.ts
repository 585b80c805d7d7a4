import type { Mixture, Ratio, SprayerCard, UseId } from '../../../../server/contract/dilution.ts'
import type { Checked } from '../../../../server/contract/entry-problems.ts'
import type { CondensateLot } from '../../../../server/contract/lots.ts'
import { firstRatio, lastUseOn, mix, notReady, sprayerCard } from '../../lib/domain.ts'
import type { LotShelf } from '../rest/lot-shelf.svelte.ts'

/** What a person has chosen on the page of uses, and what follows from it. */
export class Mixing {
  readonly #shelf: LotShelf
  lotId = $state<string | null>(null)
  use = $state<UseId>('leaves-grown')
  /** Null until another one than the mildest published was chosen. */
  #ratio = $state.raw<Ratio | null>(null)
  tank = $state.raw<{ ml: number; holds: 'water' | 'finished' }>({ ml: 20_000, holds: 'water' })
  field = $state('')

  readonly liquids: CondensateLot[] = $derived.by(() =>
    this.#shelf.lots.filter((lot): lot is CondensateLot => lot.kind === 'condensate' && lot.volumeMl > 0),
  )
  readonly ready: CondensateLot[] = $derived.by(() => this.liquids.filter((lot) => notReady(lot, this.#shelf.today).length === 0))
  readonly lot: CondensateLot | null = $derived(
    this.liquids.find((lot) => lot.id === this.lotId) ?? this.ready[0] ?? this.liquids[0] ?? null,
  )
  readonly ratio: Ratio = $derived(this.#ratio ?? firstRatio(this.use) ?? { convention: 'fold', fold: 500 })
  readonly mixture: Checked<Mixture> = $derived(mix(this.use, this.ratio, this.tank))
  readonly card: Checked<SprayerCard> | null = $derived.by(() => {
    if (this.lot === null || !this.mixture.ok) return null
    const field = this.field.trim()
    const last = field === '' || this.#shelf.ledger === null ? null : lastUseOn(this.#shelf.ledger, field)
    return sprayerCard(this.lot, this.mixture.value, this.#shelf.today, last)
  })

  constructor(shelf: LotShelf) {
    this.#shelf = shelf
  }

  chooseUse(use: UseId): void {
    this.use = use
    this.#ratio = null
  }

  chooseRatio(ratio: Ratio): void {
    this.#ratio = ratio
  }
}
