import type { Act, Action } from './actions.ts'
import type { ActId, ChannelId, Estimate, KilnConfig, KilnId, Ms, NodeId, Quality, Reason } from './fold.ts'
import type { KilnSign } from './setup.ts'
import type { AlarmCode, AlarmState, Call, FiringWay, HealthCode, HintCode, Phase, Priority, Role } from './vocabulary.ts'

// What a live page knows of one kiln, cut into parts that are each sent whole when they change.
// A slow page therefore gets the newest of each part and never a queue of old ones.

export interface ChannelView {
  channel: ChannelId
  role: Role
  /** Calibrated; null when faulty, lost or never heard. °C, kg or ppm by role. */
  value: number | null
  quality: Quality
  /** When the value was measured; null when never. */
  t: Ms | null
  heard: 'fresh' | 'late' | 'lost' | 'never'
  periodS: number
  /** Per hour over the last half hour (less while that is young), with one standard deviation; null while too short. */
  slopePerH: number | null
  slopeSd: number | null
  /** ± total of instrument-facts 2.10: how far the value may be off, same unit. */
  error: number
}

export interface PhaseSpan {
  phase: Phase
  from: Ms
  to: Ms | null
}

export interface FiringView {
  kiln: KilnId
  kilnName: string
  way: FiringWay
  /** Null while no firing is open. */
  firing: string | null
  litAt: Ms | null
  litInferred: boolean
  armedAt: Ms | null
  collectingSince: Ms | null
  sealedAt: Ms | null
  phase: Phase
  phaseSince: Ms
  because: Reason[]
  ribbon: PhaseSpan[]
  acts: Act[]
  lastWettedAt: Ms | null
  lastFedAt: Ms | null
  /**
   * The bottle that stands under the outlet now, counted from 1, what it holds at most, and the litres of the last one that was taken away;
   * null where not told. `level`: what has run since it was put there, L, between two bounds, by estimate; null where no model runs.
   */
  bottle: { number: number; litres: number | null; sizeL: number; level: { low: number; high: number } | null }
  charge: KilnConfig['charge']
  /** Between these the smoke is worth collecting, °C: this kiln's own limits. */
  band: { startC: number; stopC: number }
  /** The kiln's painted sign; null where none was chosen. */
  sign: KilnSign | null
}

/** What the operator is told to do now. `none` stands before lighting and after unloading. */
export type Command =
  | 'none'
  | 'light'
  | 'wait'
  | 'stop-feeding'
  | 'start-collecting'
  | 'collect'
  | 'stop-collecting'
  | 'seal'
  | 'keep-shut'
  | 'trial-opening'
  | 'relight'

export interface TimeRange {
  earliest: Ms
  likely: Ms
  latest: Ms
}

export interface CommandView {
  do: Command
  since: Ms
  /** The next turn, as a range that is meant to hold four times out of five. */
  next: { call: Call; range: TimeRange } | null
  /** For opening only: never an hour at which to open, only one before which not. */
  notBefore: Ms | null
  because: Reason[]
  /** What would change the call. */
  unless: Reason[]
  sure: 'low' | 'middle' | 'high'
  /** What can not be judged now, and why. */
  doubts: Reason[]
}

export interface CallView {
  call: Call
  state: 'not-yet' | 'due' | 'done' | 'withdrawn'
  since: Ms
  because: Reason[]
  forecast: TimeRange | null
}

export interface AlarmView {
  alarm: AlarmCode
  channel?: ChannelId
  state: AlarmState
  priority: Priority
  since: Ms
  firstOut: boolean
  because: Reason[]
  shelvedUntil: Ms | null
}

export interface ForecastView {
  at: Ms
  /** Smoke, °C: a 10, 50 and 90 % line. */
  smoke: { t: Ms; low: number; middle: number; high: number }[]
}

export interface HintView {
  hint: HintCode
  by: Ms
  because: Reason[]
}

/** The hands line: what needs the operator next, never "you may leave", and never an hour for the trial opening. */
export interface HandsView {
  next: HintCode | Call
  at: Ms
}

export interface KilnView {
  firing: FiringView
  channels: ChannelView[]
  command: CommandView
  calls: CallView[]
  alarms: AlarmView[]
  estimate: Estimate | null
  forecast: ForecastView | null
  hints: HintView[]
  hands: HandsView | null
}
export type KilnPart = keyof KilnView

export interface NodeView {
  node: NodeId
  state: 'init' | 'ready' | 'sleeping' | 'disconnected' | 'lost' | 'unknown'
  lastHeard: Ms | null
  boot: number | null
  clock: 'none' | 'ntp' | 'server' | 'suspect' | 'unknown'
  hardware: string
  channels: ChannelId[]
  samples: number
  duplicates: number
  conflicts: number
  refused: Record<string, number>
  /** What the node's maker should know. */
  remarks?: NodeRemark[]
}
export const nodeRemarks = ['retained-reading', 'unsequenced', 'cold-junction-assumed', 'time-ahead', 'time-unsure'] as const
export type NodeRemark = (typeof nodeRemarks)[number]

export interface SiteView {
  nodes: NodeView[]
  /** Refused records and packs, by reason. */
  refused: Record<string, number>
  health: { code: HealthCode; since: Ms }[]
  demo: { playing: boolean; speed: number } | null
}
export type SitePart = keyof SiteView

export type ServerMessage =
  /** All that is; parts with a greater `seq` come after. `now` is the site's axis, `speed` how fast it runs (demo). */
  | {
      type: 'hello'
      seq: number
      version: string
      now: Ms
      speed: number
      clockSure: boolean
      site: SiteView
      kilns: Record<KilnId, KilnView>
    }
  | { type: 'kiln'; seq: number; now: Ms; kiln: KilnId; part: KilnPart; value: unknown }
  | { type: 'site'; seq: number; now: Ms; part: SitePart; value: unknown }
  /** Every 2 s, so that a page can tell a silent link from a quiet kiln; the page's script sends `n` back. */
  | { type: 'beat'; seq: number; now: Ms; n: number }
  | { type: 'act-taken'; id: ActId }
  | { type: 'act-refused'; id: ActId; problem: string; params: Record<string, string | number> }

export type ClientMessage =
  { type: 'echo'; n: number; visible: boolean } | { type: 'act'; id: ActId; kiln: KilnId; act: Action; doneAt: Ms; corrects?: ActId }

/** The curve of a firing: columns of the same length; null is a gap. Thinned in the service with minima and maxima kept. */
export interface Curve {
  from: Ms
  to: Ms
  t: Ms[]
  series: { key: Role | 'smoke-estimated'; values: (number | null)[] }[]
  marks: { t: Ms; kind: 'act' | 'call' | 'alarm'; code: string; state?: string }[]
  ribbon: PhaseSpan[]
}

/** Points of a series in the curve of a whole firing: fine enough to be looked at closer without asking again. */
export const wholeCurvePoints = 3000

/** What a firing that is over came to, by its own log and its own alarms. */
export interface FiringTold {
  bottles: number
  /** Of the bottles that were measured, L; null where none was. */
  litres: number | null
  charcoalKg: number | null
  /** How far its log goes. */
  end: 'unloaded' | 'opened' | 'sealed' | 'died' | 'left'
  /** What sounded, notices apart, each once, in the order in which it came. */
  alarms: AlarmCode[]
}

export interface FiringSummary {
  id: string
  kiln: KilnId
  kilnName: string
  title: string
  startedAt: Ms
  endedAt: Ms | null
  demo: boolean
  phases: PhaseSpan[]
  /** About 60 points a line, for the shelf. */
  spark: { t: Ms[]; wall: (number | null)[]; smoke: (number | null)[] }
  /** Missing while it goes on, and where an older program closed it. */
  told?: FiringTold
}
