import type { Act } from '../contract/actions.ts'
import type { KilnConfig, KilnId, Ms } from '../contract/fold.ts'
import type { HealthCode } from '../contract/vocabulary.ts'
import type { JournalEntry } from '../storage/store.ts'

const encoder = new TextEncoder()
const decoder = new TextDecoder()

type Stamp = { seq: number; at: Ms }

export function messageEntry({ seq, at }: Stamp, message: { topic: string; payload: Uint8Array; retained: boolean }): JournalEntry {
  return { seq, at, kind: 'message', kiln: null, topic: message.topic, payload: message.payload, retained: message.retained }
}

export function actEntry(stamp: Stamp, kiln: KilnId, act: Act): JournalEntry {
  return documentEntry(stamp, 'act', kiln, act)
}

export function configEntry(stamp: Stamp, config: KilnConfig): JournalEntry {
  return documentEntry(stamp, 'config', config.kiln, config)
}

export function healthEntry(stamp: Stamp, health: { code: HealthCode; on: boolean }): JournalEntry {
  return documentEntry(stamp, 'health', null, health)
}

function documentEntry({ seq, at }: Stamp, kind: 'act' | 'config' | 'health', kiln: KilnId | null, document: unknown): JournalEntry {
  return { seq, at, kind, kiln, topic: '', payload: encoder.encode(JSON.stringify(document)), retained: false }
}

/** The JSON document of an act, config or health entry, as it was written by this module. */
export function documentOf<T extends Act | KilnConfig | { code: HealthCode; on: boolean }>(entry: JournalEntry): T {
  return JSON.parse(decoder.decode(entry.payload)) as T
}
