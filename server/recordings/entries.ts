import type { Action } from '../contract/actions.ts'
import type { KilnId, Ms } from '../contract/fold.ts'
import type { RecordingLine } from '../contract/recording.ts'
import { fromBase64, toBase64 } from '../runtime/base64.ts'
import { actEntry, configEntry, documentOf, healthEntry, messageEntry } from '../runtime/entry.ts'
import type { Act } from '../contract/actions.ts'
import type { KilnConfig } from '../contract/fold.ts'
import type { HealthCode } from '../contract/vocabulary.ts'
import type { JournalEntry } from '../storage/store.ts'
import { samePayload } from './payload.ts'

const encoder = new TextEncoder()

/** The journal entry that a line stands for. An act without an id gets the number of its line. */
export function entryOf(line: RecordingLine, place: { seq: number; at: Ms; kiln: KilnId }): JournalEntry {
  const { seq, at, kiln } = place
  if ('topic' in line) {
    const payload = 'bytes' in line ? fromBase64(line.bytes) : encoder.encode(JSON.stringify(line.payload) ?? '')
    return messageEntry({ seq, at }, { topic: line.topic, payload, retained: line.retained ?? false })
  }
  if ('config' in line) return configEntry({ seq, at }, { ...line.config, kiln })
  if ('health' in line) return healthEntry({ seq, at }, { code: line.health, on: line.on })
  const { at: _, id, doneAt, corrects, ...act } = line
  return actEntry({ seq, at }, kiln, {
    id: id ?? `line-${seq}`,
    at,
    doneAt: doneAt === undefined ? at : Math.min(at, Date.parse(doneAt)),
    act: act as Action,
    ...(corrects === undefined ? {} : { corrects }),
  })
}

/** The line that an entry becomes in an export; `entryOf` gives the same entry back but for its number. */
export function lineOf(entry: JournalEntry): RecordingLine {
  const at = new Date(entry.at).toISOString()
  switch (entry.kind) {
    case 'message': {
      const payload = samePayload(entry.payload)
      const content = payload === undefined ? { bytes: toBase64(entry.payload) } : { payload }
      return { at, topic: entry.topic, ...content, retained: entry.retained } as RecordingLine
    }
    case 'act': {
      const { id, doneAt, act, corrects } = documentOf<Act>(entry)
      return { at, id, doneAt: new Date(doneAt).toISOString(), ...(corrects === undefined ? {} : { corrects }), ...act }
    }
    case 'config':
      return { at, config: documentOf<KilnConfig>(entry) }
    case 'health': {
      const { code, on } = documentOf<{ code: HealthCode; on: boolean }>(entry)
      return { at, health: code, on }
    }
  }
}
