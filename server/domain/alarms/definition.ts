import type { AlarmCode, Phase, Priority } from '../../contract/vocabulary.ts'

/** Alarms of one group have one cause; the first of them is marked. */
export type AlarmGroup = 'condenser' | 'fire' | 'operator' | 'sealed' | 'gas' | 'probe' | 'service'

export interface AlarmDefinition {
  priority: Priority
  group: AlarmGroup
  /** How long the condition must last, and be gone, s. */
  onDelayS: number
  offDelayS: number
  latching: boolean
  returnsByItself: boolean
  /** Sounds again when acknowledged and still there after this long, s. */
  realarmS: number | null
  longestShelveMin: number
  /** Silent by design in these phases. */
  quietIn: readonly Phase[]
  /** Where the limit comes from. */
  source: string
  /** Codes of words: what it costs, and what to do first. */
  consequence: string
  response: string
}

export type AlarmTable = Readonly<Record<AlarmCode, AlarmDefinition>>
