import type { KilnConfig, Ms } from '../../contract/fold.ts'
import type { Role } from '../../contract/vocabulary.ts'
import type { Facts } from './facts.ts'
import type { History } from './history.ts'

/** What the rules look at: levels now (mean of the last 10 s), the minutes behind them, and what was done. */
export interface Look {
  at: Ms
  now: Partial<Record<Role, number>>
  past: Record<Role, History>
  facts: Facts
  config: KilnConfig
  /** From the log, or inferred from the readings. */
  litAt: Ms | null
}
