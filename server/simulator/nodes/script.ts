import type { Action } from '../../contract/actions.ts'

/** One channel as a birth document announces it (wire format, birth document). */
export type ChannelBirth = Record<string, unknown> & { n: string }

/** One reading of a row: a number, a word of fault, or a second channel such as a cold junction. */
export interface Reading {
  n: string
  u?: string
  v?: number
  vs?: string
}

/** Everything that a node measured at one moment, seconds after lighting. */
export interface Row {
  atS: number
  readings: Reading[]
}

/** What one virtual node has to say, and what the person beside it does meanwhile. */
export interface Script {
  channels: ChannelBirth[]
  clock: 'none' | 'ntp' | 'server'
  periodS: number
  rows: Row[]
  acts: { atS: number; act: Action }[]
}
