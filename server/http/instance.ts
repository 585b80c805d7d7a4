import type { Act } from '../contract/actions.ts'
import type { KilnConfig, KilnId, Ms } from '../contract/fold.ts'
import type { KilnChange } from '../contract/learnt.ts'
import type { KilnView, SiteView } from '../contract/live.ts'
import type { ProbeView } from '../contract/setup.ts'
import type { Effect } from '../runtime/driver.ts'
import type { Page } from '../runtime/watch.ts'
import type { CurvePoint, Store } from '../storage/store.ts'

/** A site as the web sees it: the kiln itself, or the demo with a clock, store and topics of its own. */
export interface Instance {
  demo: boolean
  store: Store
  now(): Ms
  speed(): number
  clockSure(): boolean
  /** A person has said that the clock is right, and nothing speaks against it since; rest marks count only then. */
  clockConfirmed(): boolean
  kilns(): KilnId[]
  kilnView(kiln: KilnId): KilnView | null
  siteView(): SiteView
  probes(): ProbeView[]
  session(kiln: KilnId): { id: string; openedAt: Ms | null; config: KilnConfig } | null
  idleCurve(session: string): readonly CurvePoint[]
  forget(kiln: KilnId, what: KilnChange, by: string): Promise<void>
  act(kiln: KilnId, act: Omit<Act, 'at'>): Promise<void>
  echo(page: Page, visible: boolean): void
  leave(page: Page): void
  listen(listener: (effects: readonly Effect[]) => void): () => void
}
