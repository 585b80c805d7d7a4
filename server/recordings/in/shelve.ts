import type { Act } from '../../contract/actions.ts'
import type { Ms, Output } from '../../contract/fold.ts'
import { putActs } from '../../runtime/acts.ts'
import type { Driver, Folds } from '../../runtime/driver.ts'
import { documentOf } from '../../runtime/entry.ts'
import { originVersion } from '../../runtime/origin.ts'
import { Shelf } from '../../runtime/shelf.ts'
import type { CurvePoint, Store } from '../../storage/store.ts'
import { playLines } from '../play.ts'
import type { Played } from '../play.ts'
import type { Recording } from '../read.ts'
import { keepFile } from './kept-file.ts'

/** The kiln beside which the service runs must not wait for an old firing: so long at once, ms. */
const sliceMs = 10
const atOnce = 2000

/**
 * Plays a recording and puts what it tells on the shelf as a firing that is over. The record itself is written last, so that a cut
 * leaves nothing half on the shelf; everything before it is written again in the same way.
 * @param text the file's own lines, kept as they are for every later replay
 */
export async function shelve<I, K>(
  store: Store,
  folds: Folds<I, K>,
  file: { id: string; text: string; recording: Recording },
  pause: () => Promise<void> = () => new Promise((go) => setImmediate(go)),
): Promise<void> {
  const { id, text, recording } = file
  const kept = new Gathered(store, id)
  const steps = playLines(folds, recording)
  let driver: Driver<I, K> | null = null
  let last: Ms = 0
  let began: Ms | null = null
  for (let since = performance.now(); driver === null;) {
    const step = steps.next()
    if (step.done) driver = step.value
    else {
      last = step.value.at
      began ??= step.value.at
      if (kept.take(step.value)) await kept.write()
    }
    if (performance.now() - since > sliceMs) {
      await pause()
      since = performance.now()
    }
  }
  await kept.write()
  const config = [...driver.state.sessions.values()][0]?.config
  const startedAt = kept.openedAt ?? (recording.lines[0] ? Date.parse(recording.lines[0].at) : last)
  await keepFile(store, id, last, text)
  await putActs(store, id, last, kept.acts)
  const shelf = new Shelf(store, { demo: recording.header.demo ?? false, foldVersion: originVersion(folds) })
  const originAt = Math.min(startedAt, began ?? startedAt)
  await store.putFiring(
    await shelf.finished({
      id,
      kiln: config?.kiln ?? 'kiln-1',
      kilnName: config?.name ?? '',
      title: recording.header.title ?? '',
      startedAt,
      endedAt: last,
      demo: recording.header.demo ?? false,
      phases: [],
      spark: { t: [], wall: [], smoke: [] },
      // nothing of it stands in the journal
      originSeq: 0,
      endSeq: 0,
      originAt,
      config: JSON.stringify(config),
      intake: new Uint8Array(),
      foldVersion: originVersion(folds),
    }),
  )
  await store.wholeCurve(id, originAt, last)
}

/** What was told since the last writing. */
class Gathered {
  readonly acts: Act[] = []
  openedAt: Ms | null = null
  private outputs: Output[] = []
  private points: CurvePoint[] = []
  private readonly store: Store
  private readonly id: string

  constructor(store: Store, id: string) {
    this.store = store
    this.id = id
  }

  /** @returns there is enough to be written */
  take({ entry, effects }: Played): boolean {
    if (entry?.kind === 'act') this.acts.push(documentOf<Act>(entry))
    for (const effect of effects) {
      if (effect.kind === 'output') this.outputs.push(effect.output)
      else if (effect.kind === 'point') this.points.push(effect.point)
      else if (effect.kind === 'opened') this.openedAt ??= effect.at
    }
    return this.points.length + this.outputs.length > atOnce
  }

  async write(): Promise<void> {
    const { outputs, points } = this
    this.outputs = []
    this.points = []
    // outputs are numbered by kiln: an imported firing counts under its own name, so that it meets no number of this site
    if (outputs.length > 0) await this.store.saveOutputs(this.id, this.id, outputs)
    if (points.length > 0) await this.store.savePoints(this.id, points)
  }
}
