import type { AlarmState } from '../../contract/vocabulary.ts'

/** What can happen to an alarm: the process (`raise`, `clear`, `realarm`), a person, the design of the kiln, or maintenance. */
export const alarmCommands = [
  'raise',
  'clear',
  'acknowledge',
  'realarm',
  'shelve',
  'unshelve',
  'suppress',
  'release',
  'remove',
  'restore',
] as const
export type AlarmCommand = (typeof alarmCommands)[number]

export interface Nature {
  /** The condition after its delays. */
  on: boolean
  /** Stays on when the condition has gone, until a person took note of it. */
  latching: boolean
  /** Needs no acknowledgement when its condition has gone. */
  returnsByItself: boolean
}

/** The next state, or null where the command is blocked. States and moves: instrument facts 6.2. */
export function transition(state: AlarmState, command: AlarmCommand, nature: Nature): AlarmState | null {
  const present: AlarmState = nature.on ? 'unacknowledged' : 'normal'
  switch (command) {
    case 'raise':
      return state === 'normal' ||
        state === 'returned-unacknowledged' ||
        state === 'latched-unacknowledged' ||
        state === 'latched-acknowledged'
        ? 'unacknowledged'
        : null
    case 'clear':
      if (state === 'unacknowledged')
        return nature.latching ? 'latched-unacknowledged' : nature.returnsByItself ? 'normal' : 'returned-unacknowledged'
      if (state === 'acknowledged') return nature.latching ? 'latched-acknowledged' : 'normal'
      return null
    case 'acknowledge':
      if (state === 'unacknowledged') return 'acknowledged'
      if (state === 'returned-unacknowledged') return 'normal'
      if (state === 'latched-unacknowledged') return 'latched-acknowledged'
      // taking note a second time is the reset of a latched alarm
      return state === 'latched-acknowledged' ? 'normal' : null
    case 'realarm':
      return state === 'acknowledged' && nature.on ? 'unacknowledged' : null
    case 'shelve':
      return mayBeHidden(state) ? 'shelved' : null
    case 'unshelve':
      return state === 'shelved' ? present : null
    case 'suppress':
      return mayBeHidden(state) ? 'suppressed' : null
    case 'release':
      return state === 'suppressed' ? present : null
    case 'remove':
      return mayBeHidden(state) ? 'out-of-service' : null
    case 'restore':
      return state === 'out-of-service' ? present : null
  }
}

function mayBeHidden(state: AlarmState): boolean {
  return state === 'normal' || state === 'unacknowledged' || state === 'acknowledged' || state === 'returned-unacknowledged'
}
