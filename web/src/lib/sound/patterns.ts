import type { Priority } from '../../../../server/contract/vocabulary.ts'

/** One tone: begin and length in s, pitch in Hz. Handbook field-ui 4.6: 800 to 2500 Hz carries beside a fire. */
export interface Tone {
  at: number
  forS: number
  hz: number
}
export interface Pattern {
  tones: Tone[]
  /** s from start to start; null: once. */
  everyS: number | null
}

const pulses = (starts: number[], forS: number, pitches: number[]): Tone[] =>
  starts.map((at, index) => ({ at, forS, hz: pitches[index % pitches.length] ?? 1000 }))

/** Own patterns in the spirit of the handbook (field-ui 4.6): told apart by rhythm first, by pitch second. */
export const patterns = {
  urgent: { tones: pulses([0, 0.2, 0.4, 0.8, 1.0], 0.14, [1100, 1500, 1900, 1500, 1900]), everyS: 5 },
  warning: { tones: pulses([0, 0.45, 0.9], 0.3, [1000]), everyS: 20 },
  notice: { tones: pulses([0, 0.25], 0.15, [880, 990]), everyS: null },
  call: { tones: pulses([0, 0.3, 0.6], 0.25, [880, 1100, 1320]), everyS: null },
  'no-data': { tones: pulses([0], 1.2, [820]), everyS: 10 },
} as const satisfies Record<Priority | 'call' | 'no-data', Pattern>

export type PatternName = keyof typeof patterns
