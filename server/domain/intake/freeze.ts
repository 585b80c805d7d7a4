import { decodeUtf8, encodeUtf8 } from '../text/utf8.ts'
import type { IntakeState } from './state.ts'

/** The state as JSON in UTF-8; a Map becomes `{"map":[[key,value],...]}`, in its order. */
export function freezeState(state: IntakeState): Uint8Array {
  return encodeUtf8(JSON.stringify(state, (_, value: unknown) => (value instanceof Map ? { map: [...value] } : value)))
}

/** @throws RangeError on bytes that `freezeState` did not make: a checkpoint is ours, so this is damage */
export function thawState(bytes: Uint8Array): IntakeState {
  const text = decodeUtf8(bytes)
  if (text === null) throw new RangeError('frozen intake state is not UTF-8')
  return JSON.parse(text, (_, value: unknown) => (isFrozenMap(value) ? new Map(value.map) : value)) as IntakeState
}

const isFrozenMap = (value: unknown): value is { map: [unknown, unknown][] } =>
  typeof value === 'object' && value !== null && 'map' in value && Array.isArray(value.map)
