import type { KilnConfig, NodeId } from '../contract/fold.ts'
import type { RecordingHeader } from '../contract/recording.ts'
import { toBase64 } from '../runtime/base64.ts'
import type { FiringRecord, JournalEntry, Store } from '../storage/store.ts'
import { lineOf } from './entries.ts'

export function exportHeader(firing: FiringRecord): RecordingHeader {
  const config = JSON.parse(firing.config) as KilnConfig
  return {
    recording: 1,
    ...(firing.title === '' ? {} : { title: firing.title }),
    kiln: { volumeL: config.volumeL, cover: config.cover, way: config.way },
    charge: config.charge,
    roles: config.roles,
    ...(firing.demo ? { demo: true } : {}),
    start: {
      at: new Date(firing.originAt).toISOString(),
      seq: firing.originSeq,
      config,
      intake: toBase64(firing.intake),
      version: firing.foldVersion,
    },
  }
}

/**
 * A firing as the lines of a recording, each with its line feed.
 * @param foreign nodes whose channels all stand at other kilns of the site; what they sent is left out.
 */
export async function* exportFiring(store: Store, firing: FiringRecord, foreign: ReadonlySet<NodeId>): AsyncGenerator<string> {
  yield `${JSON.stringify(exportHeader(firing))}\n`
  for await (const entries of store.read(firing.originSeq, firing.endSeq ?? undefined)) {
    let page = ''
    for (const entry of entries) if (belongs(entry, firing, foreign)) page += `${JSON.stringify(lineOf(entry))}\n`
    if (page !== '') yield page
  }
}

function belongs(entry: JournalEntry, firing: FiringRecord, foreign: ReadonlySet<NodeId>): boolean {
  if (entry.kind === 'message') return !foreign.has(entry.topic.split('/').slice(2, 4).join('/'))
  return entry.kiln === null || entry.kiln === firing.kiln
}
