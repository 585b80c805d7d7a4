// Closed lists that service, page, recordings and node makers share (contract version 1). Wire words are fixed: they stand in files.

/** What a channel measures at the kiln. A channel named after a role takes it by itself. */
export const roles = ['firebox', 'wall', 'outlet', 'smoke', 'ambient', 'core', 'bottle', 'co'] as const
export type Role = (typeof roles)[number]

export const phases = ['idle', 'kindling', 'drying', 'breakdown', 'vinegar', 'tar', 'clearing', 'cooling', 'cold', 'failed'] as const
export type Phase = (typeof phases)[number]

export const calls = ['stop-feeding', 'start-collecting', 'stop-collecting', 'seal', 'open'] as const
export type Call = (typeof calls)[number]

export const alarmCodes = [
  'condenser-warm',
  'condenser-hot',
  'fire-dying',
  'fire-out',
  'flame-inside',
  'stop-overdue',
  'seal-overdue',
  'air-leak',
  'reignition',
  'vent-choked',
  'co-high',
  'probe-fault',
  'probe-silent',
  'probe-stuck',
  'probe-swapped',
  'wall-off',
  'node-lost',
  'clock-suspect',
  'storage-failing',
  'service-failing',
  'nobody-watching',
] as const
export type AlarmCode = (typeof alarmCodes)[number]

/** Names of ANSI/ISA-18.2 and IEC 62682, as the handbook read them (instrument facts, 6.2). */
export const alarmStates = [
  'normal',
  'unacknowledged',
  'acknowledged',
  'returned-unacknowledged',
  'latched-unacknowledged',
  'latched-acknowledged',
  'shelved',
  'suppressed',
  'out-of-service',
] as const
export type AlarmState = (typeof alarmStates)[number]

export const priorities = ['notice', 'warning', 'urgent'] as const
export type Priority = (typeof priorities)[number]

export const hintCodes = [
  'feed-fire',
  'wet-cloths',
  'fresh-bottle',
  'take-glass',
  'narrow-air',
  'check-drip',
  'check-smoke',
  'log-seal',
  'check-seal',
  'open-untold',
] as const
export type HintCode = (typeof hintCodes)[number]

export const smokeLooks = ['none', 'white', 'yellow', 'blue', 'clear'] as const
export type SmokeLook = (typeof smokeLooks)[number]

export const dripLooks = ['none', 'clear', 'pale', 'amber', 'dark', 'black'] as const
export type DripLook = (typeof dripLooks)[number]

export const openings = ['open', 'half', 'hole', 'closed'] as const
export type Opening = (typeof openings)[number]

export const weathers = ['rain', 'wind', 'dry'] as const
export type Weather = (typeof weathers)[number]

/** Words of a probe's fault on the wire (`vs: "fault:open"`). */
export const faultWords = ['open', 'short-gnd', 'short-vcc', 'range', 'bus', 'crc', 'not-converted', 'saturated'] as const
export type FaultWord = (typeof faultWords)[number]

/** Troubles of the service itself that the kiln fold turns into alarms. */
export const healthCodes = ['storage-failing', 'clock-suspect', 'service-failing', 'nobody-watching'] as const
export type HealthCode = (typeof healthCodes)[number]

/** The small fire is kept to the end, or the charge is let run by itself once its smoke is thick and white. */
export const firingWays = ['kept', 'let-run'] as const
export type FiringWay = (typeof firingWays)[number]

/** Why a message, or a record of one, was turned away by the intake; each is counted and shown. */
export const refusalReasons = [
  // topic
  'bad-topic',
  'other-site',
  'unknown-contract',
  'unknown-kind',
  'too-many-nodes',
  // payload
  'pack-too-large',
  'bad-utf8',
  'bad-json',
  'nested',
  'duplicate-name',
  'unsafe-name',
  'not-a-pack',
  'bad-info',
  'bad-channel',
  'bad-state',
  // pack
  'empty-pack',
  'too-many-records',
  'unknown-label',
  'unknown-version',
  'bad-base',
  'bad-identity',
  'conflict',
  // record
  'not-a-record',
  'bad-name',
  'bad-number',
  'bad-field',
  'two-values',
  'no-value',
  'no-number',
  'foreign-name',
  'unknown-name',
  'too-many-channels',
  'bad-time',
  'no-unit',
  'unknown-unit',
  'unit-version',
  'wrong-unit',
  'unknown-fault',
  'out-of-range',
] as const
export type RefusalReason = (typeof refusalReasons)[number]
