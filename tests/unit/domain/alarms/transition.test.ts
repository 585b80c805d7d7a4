import { describe, expect, it } from 'vitest'
import { alarmStates, type AlarmState } from '../../../../server/contract/vocabulary.ts'
import { alarmCommands, transition, type AlarmCommand } from '../../../../server/domain/alarms/transition.ts'

// Names and moves: ANSI/ISA-18.2 and IEC 62682 as read in instrument facts 6.2. A dash is a blocked command.
// For commands that look at the condition: `on/off` gives the state with the condition there and gone.
const short: Record<string, AlarmState> = {
  N: 'normal',
  U: 'unacknowledged',
  A: 'acknowledged',
  R: 'returned-unacknowledged',
  LU: 'latched-unacknowledged',
  LA: 'latched-acknowledged',
  S: 'shelved',
  D: 'suppressed',
  O: 'out-of-service',
}

//                                   N     U     A     R    LU    LA    S      D      O
const plain: Record<AlarmCommand, string> = {
  raise: /*                     */ ' U     -     -     U     U     U    -      -      - ',
  clear: /*                     */ ' -     R     N     -     -     -    -      -      - ',
  acknowledge: /*               */ ' -     A     -     N     LA    N    -      -      - ',
  realarm: /*                   */ ' -     -   U/-     -     -     -    -      -      - ',
  shelve: /*                    */ ' S     S     S     S     -     -    -      -      - ',
  unshelve: /*                  */ ' -     -     -     -     -     -   U/N     -      - ',
  suppress: /*                  */ ' D     D     D     D     -     -    -      -      - ',
  release: /*                   */ ' -     -     -     -     -     -    -     U/N     - ',
  remove: /*                    */ ' O     O     O     O     -     -    -      -      - ',
  restore: /*                   */ ' -     -     -     -     -     -    -      -     U/N',
}

const cells = alarmCommands.flatMap((command) =>
  plain[command]
    .trim()
    .split(/\s+/)
    .flatMap((cell, i) => {
      const [on, off = on] = cell.split('/')
      const state = alarmStates[i] as AlarmState
      return [
        { command, state, on: true, next: on },
        { command, state, on: false, next: off },
      ]
    }),
)

describe('every command in every state', () => {
  it('covers all nine states and ten commands', () => expect(cells).toHaveLength(9 * 10 * 2))
  it.each(cells)('$command in $state, condition $on -> $next', ({ command, state, on, next }) => {
    const to = transition(state, command, { on, latching: false, returnsByItself: false })
    expect(to).toBe(next === '-' ? null : short[next as string])
  })
})

describe('the kinds of alarm', () => {
  const latching = { on: false, latching: true, returnsByItself: false }
  it('a latched alarm stays until it was taken note of, and then until it is reset', () => {
    expect(transition('unacknowledged', 'clear', latching)).toBe('latched-unacknowledged')
    expect(transition('acknowledged', 'clear', latching)).toBe('latched-acknowledged')
  })
  it('one that returns by itself needs no acknowledgement', () => {
    expect(transition('unacknowledged', 'clear', { on: false, latching: false, returnsByItself: true })).toBe('normal')
  })
})
