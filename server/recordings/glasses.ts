import type { Act } from '../contract/actions.ts'
import type { ActId, KilnId, Ms } from '../contract/fold.ts'
import type { RecordedPicture } from '../contract/recording.ts'
import type { Store } from '../storage/store.ts'

const kind = 'glass-picture'

export type GlassPicture = Pick<RecordedPicture, 'type' | 'base64'>

/** The photograph of one glass, named by the act that logged it; null where none was taken. */
export async function glassPictureOf(store: Store, kiln: KilnId, act: ActId): Promise<GlassPicture | null> {
  const last = (await store.history(kind, `${kiln} ${act}`)).at(-1)
  return last ? (JSON.parse(last.json) as GlassPicture) : null
}

/** The first one stays. @returns whether it was this one */
export async function keepGlassPicture(
  store: Store,
  of: { kiln: KilnId; act: ActId; at: Ms; by: string },
  { type, base64 }: GlassPicture,
): Promise<boolean> {
  const { kiln, act, at, by } = of
  if (await glassPictureOf(store, kiln, act)) return false
  await store.putDocument({ kind, id: `${kiln} ${act}`, at, by, json: JSON.stringify({ type, base64 }) })
  return true
}

/** The pictures of a firing as the rows that stand after the lines of its recording, one page each. */
export async function* pictureRows(store: Store, kiln: KilnId, acts: readonly Act[]): AsyncGenerator<string> {
  for (const { id, act } of acts) {
    const picture = act.action === 'glass' && act.photo ? await glassPictureOf(store, kiln, id) : null
    const row: RecordedPicture | null = picture && { picture: id, type: picture.type, base64: picture.base64 }
    if (row) yield `${JSON.stringify(row)}\n`
  }
}
