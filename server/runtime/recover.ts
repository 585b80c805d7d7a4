import type { KilnConfig, Ms } from '../contract/fold.ts'
import type { Store } from '../storage/store.ts'
import { thawSite } from './checkpoint.ts'
import type { Clock } from './clock.ts'
import { Driver } from './driver.ts'
import type { Effect, Folds } from './driver.ts'

export interface Recovered<I, K> {
  driver: Driver<I, K>
  clock: Clock
  last: { seq: number; at: Ms }
}

/**
 * The newest checkpoint, then the rest of the journal, then the seconds until now: the site as it would be had it never stopped.
 * Without a checkpoint that these folds can read it begins where the oldest firing still going on began.
 */
export async function recover<I, K>(
  folds: Folds<I, K>,
  store: Store,
  setup: { root: string; site: string; configs: readonly KilnConfig[]; clock: (notBefore: Ms) => Clock },
  told: (driver: Driver<I, K>, effects: Effect[]) => void,
): Promise<Recovered<I, K>> {
  const { lastSeq, lastAt } = await store.start()
  const checkpoints = await store.checkpoints()
  const thawed = thawSite(folds, checkpoints)
  const clock = setup.clock(Math.max(lastAt, ...checkpoints.map((c) => c.at), 0))
  const driver = thawed ?? (await fromFirings(folds, store, { ...setup, at: clock.now(), seq: lastSeq }))
  told(driver, driver.take())
  for await (const entries of store.read(driver.state.seq, lastSeq)) for (const entry of entries) told(driver, driver.drive(entry))
  told(driver, driver.advance(clock.now()))
  return { driver, clock, last: { seq: lastSeq, at: Math.max(lastAt, driver.state.at) } }
}

async function fromFirings<I, K>(
  folds: Folds<I, K>,
  store: Store,
  setup: { root: string; site: string; configs: readonly KilnConfig[]; at: Ms; seq: number },
): Promise<Driver<I, K>> {
  let origin = { at: setup.at, seq: setup.seq }
  for (const { id, endedAt } of await store.firings()) {
    const firing = endedAt === null ? await store.firing(id) : null
    if (firing && firing.originSeq < origin.seq) origin = { at: firing.originAt, seq: firing.originSeq }
  }
  return Driver.fresh(folds, { ...setup, ...origin, rolling: true })
}
