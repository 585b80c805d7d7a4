import type { AlarmCode, AlarmState, Call, FaultWord, FiringWay, HealthCode, HintCode, Phase, Priority, Role } from './vocabulary.ts'
import type { Action } from './actions.ts'
import type { Lesson, Prior } from './learnt.ts'
import type { CondenserKind } from './plan.ts'
import type { KilnSign } from './setup.ts'

/** Milliseconds on the one monotonic axis of a site; outside it is mapped to UTC in one place, so it reads as Unix time. */
export type Ms = number
/** `{site}/{node}/{channel}`, e.g. `yard/n1/wall`. */
export type ChannelId = string
/** `{site}/{node}`. */
export type NodeId = string
export type KilnId = string
export type ActId = string

export type Quality = 'good' | 'suspect' | `fault:${FaultWord}`

/** One thing that a fold took into account, as a code with numbers; the page makes the words. */
export interface Reason {
  code: string
  value?: number
  limit?: number
  /** How long it has held, s. */
  forS?: number
  channel?: ChannelId
}

export type Input = { seq: number; at: Ms } & (
  | {
      kind: 'sample'
      channel: ChannelId
      /** When it was measured. */
      t: Ms
      late: boolean
      quality: Quality
      /** As sent, in the channel's own unit; null on a fault. */
      raw: number | null
      /** Linearised and cold-junction corrected, before field calibration: °C (kg for a bottle, ppm for CO); null on a fault. */
      value: number | null
      coldJunctionC?: number
    }
  /** A birth document that says how often a channel reports and in which steps. */
  | {
      kind: 'channel'
      channel: ChannelId
      periodS: number
      lsb: number
      /** As the birth document words them; the error of a value depends on them. */
      probe?: { sensor: string; converter: string; linearised: boolean }
    }
  | { kind: 'node'; node: NodeId; is: 'up' | 'lost' }
  | { kind: 'act'; id: ActId; doneAt: Ms; act: Action; corrects?: ActId }
  | { kind: 'config'; config: KilnConfig }
  | { kind: 'health'; code: HealthCode; on: boolean }
  | { kind: 'tick' }
)

export type Output = { cause: number; n: number; at: Ms } & (
  | { kind: 'phase'; phase: Phase; because: Reason[] }
  | { kind: 'call'; call: Call; state: 'due' | 'done' | 'withdrawn'; because: Reason[] }
  | { kind: 'alarm'; alarm: AlarmCode; channel?: ChannelId; state: AlarmState; priority: Priority; because: Reason[] }
  | { kind: 'forecast'; call: Call; earliest: Ms; likely: Ms; latest: Ms }
  | { kind: 'estimate'; estimate: Estimate }
  | { kind: 'hint'; hint: HintCode; by: Ms; because: Reason[] }
  | { kind: 'lesson'; lesson: Lesson }
)

/** What runs through the pipe now, with one standard deviation each. Shares are mass shares of the condensate of the moment. */
export interface Estimate {
  smokeC: number
  smokeSd: number
  acidShare: number
  acidSd: number
  tarShare: number
  tarSd: number
  condensateKgH: number
  condensateKg: number
  /** 0 raw wood .. 1 charred through, mean of the charge. */
  charShare: number
  charSd: number
  /** From the mouth to the chimney: probability that this slice is wet, drying, breaking down, charcoal; each sums to 1. */
  inside: InsideSlice[]
  /** Where it comes from: the ensemble, or only a guess from the phase. */
  from: 'ensemble' | 'phase'
}
export type InsideSlice = [wet: number, drying: number, breaking: number, charcoal: number]

export interface Fold<S> {
  version: number
  start(config: KilnConfig): S
  /** May reuse the memory of `state`. */
  step(state: S, input: Input): { state: S; outputs: readonly Output[] }
  freeze(state: S): Uint8Array
  thaw(bytes: Uint8Array): S
}

export interface Charge {
  /** As loaded, kg. */
  massKg?: number
  /** Wet basis, %. */
  moisturePct?: number
  /** Thickness of the pieces, mm. */
  pieceMm?: number
}

export interface Calibration {
  /** value = gain × reading + offset, °C. */
  gain: number
  offset: number
}

/** What a kiln's fold starts with. It travels in the header of an export, so that a replay gives the same lines. */
export interface KilnConfig {
  kiln: KilnId
  name: string
  volumeL: number
  cover: 'earth' | 'none' | 'brick'
  way: FiringWay
  charge: Charge
  roles: Record<ChannelId, Role>
  calibration: Record<ChannelId, Calibration>
  limits: Limits
  /** Worth of a kilogram of condensate: good, tar-laden, watery. */
  worth: { good: number; tarry: number; watery: number }
  altitudeM: number
  /** Its painted sign. */
  sign?: KilnSign | undefined
  /** What the bottle under the outlet holds, L. */
  bottleL?: number | undefined
  condenser?: CondenserKind | undefined
  seed: number
  /** What earlier firings of this kiln taught; none where none did, or where it was made to forget. */
  prior?: Prior | undefined
}

/** Every limit that a site may set; the settings schema gives defaults, bounds and sources. Temperatures °C, times s. */
export interface Limits {
  smokeStartC: number
  smokeStopC: number
  condenserNoticeC: number
  condenserWarningC: number
  condenserOnDelayS: number
  condenserOffDelayS: number
  condenserDeadBandK: number
  fireLowC: number
  fireOutC: number
  openHottestC: number
  openMinimumWaitH: number
  coCautionPpm: number
  coLeavePpm: number
}

export const defaultLimits: Limits = {
  smokeStartC: 80, // trade facts 2.1
  smokeStopC: 150, // trade facts 2.1
  condenserNoticeC: 45, // instrument facts 8.3
  condenserWarningC: 55, // instrument facts 8.3
  condenserOnDelayS: 240, // trials: shorter (instrument facts 6.3 has 10 to 20 s) cries at the top of every cycle of the cloths
  condenserOffDelayS: 45, // instrument facts 6.3
  condenserDeadBandK: 2, // instrument facts 6.3
  fireLowC: 350, // common practice, no source
  fireOutC: 200, // common practice, no source
  openHottestC: 45, // trade facts 7.3.1
  openMinimumWaitH: 10, // common practice, no source: a night
  coCautionPpm: 35, // trade facts 7.1.2
  coLeavePpm: 200, // trade facts 7.1.2
}
