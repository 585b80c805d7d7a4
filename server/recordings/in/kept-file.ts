import { gunzipSync, gzipSync } from 'node:zlib'
import type { Ms } from '../../contract/fold.ts'
import type { Store } from '../../storage/store.ts'

const kind = 'recording-file'

/** The lines of a firing that came from a file are kept as they came: the journal holds only what this site heard itself. */
export async function keepFile(store: Store, firing: string, at: Ms, text: string): Promise<void> {
  await store.putDocument({ kind, id: firing, at, by: 'service', json: JSON.stringify({ gzip: gzipSync(text).toString('base64') }) })
}

/** Null for a firing of this site. */
export async function keptFile(store: Store, firing: string): Promise<string | null> {
  const kept = (await store.history(kind, firing)).at(-1)
  if (!kept) return null
  const { gzip } = JSON.parse(kept.json) as { gzip: string }
  return gunzipSync(Buffer.from(gzip, 'base64')).toString()
}
