import { describe, expect, it } from 'vitest'
import type { AlarmCode, Phase } from '../../../../server/contract/vocabulary.ts'
import { alarmCodes } from '../../../../server/contract/vocabulary.ts'
import {
  boardView,
  ebb,
  emptyBoard,
  keyOf,
  order,
  tell,
  tickBoard,
  type AlarmBoard,
  type Telling,
} from '../../../../server/domain/alarms/board.ts'
import type { Sign } from '../../../../server/domain/alarms/limit.ts'
import { alarmTable } from '../../../../server/domain/alarms/tables/definitions.ts'

const minute = 60_000

function put(board: AlarmBoard, at: number, alarm: AlarmCode, sign: Sign, more: Partial<Telling> & { phase?: Phase } = {}): string | null {
  const { phase = 'vinegar', ...rest } = more
  return tell(board, alarmTable, at, phase, { alarm, channel: null, sign, because: [], ...rest })?.state ?? null
}
const stateOf = (board: AlarmBoard, alarm: AlarmCode, channel: string | null = null): string | undefined =>
  board.items[keyOf(alarm, channel)]?.state

describe('definitions', () => {
  it('has one for every code of the contract, with source, consequence and response', () => {
    expect(Object.keys(alarmTable).sort()).toEqual([...alarmCodes].sort())
    for (const code of alarmCodes) {
      const definition = alarmTable[code]
      expect(definition.source, code).not.toBe('')
      expect(definition.consequence, code).toMatch(/^[a-z-]+$/)
      expect(definition.response, code).toMatch(/^[a-z-]+$/)
    }
  })
  it('calls only those urgent that put people or the charge in danger within minutes', () => {
    expect(alarmCodes.filter((code) => alarmTable[code].priority === 'urgent')).toEqual(['flame-inside', 'reignition', 'co-high'])
  })
})

describe('a bad probe', () => {
  it('never quiets the alarm that it feeds', () => {
    const board = emptyBoard()
    put(board, 0, 'fire-dying', 'abnormal')
    tickBoard(board, alarmTable, 61_000)
    put(board, 70_000, 'fire-dying', 'unknown')
    expect(tickBoard(board, alarmTable, 3_600_000)).toEqual([])
    expect(stateOf(board, 'fire-dying')).toBe('unacknowledged')
  })
  it('does not raise one either', () => {
    const board = emptyBoard()
    put(board, 0, 'fire-dying', 'unknown')
    tickBoard(board, alarmTable, 3_600_000)
    expect(boardView(board)).toEqual([])
  })
})

describe('shelving', () => {
  it('ends by itself, and the alarm comes back as it stands', () => {
    const board = emptyBoard()
    put(board, 0, 'stop-overdue', 'abnormal', { delays: { onS: 0, offS: 0 } })
    order(board, alarmTable, 1000, 'shelve', 'stop-overdue', null, 10)
    expect(stateOf(board, 'stop-overdue')).toBe('shelved')
    expect(boardView(board)[0]?.shelvedUntil).toBe(1000 + 10 * minute)
    expect(tickBoard(board, alarmTable, 10 * minute)).toEqual([])
    expect(tickBoard(board, alarmTable, 1000 + 10 * minute).map((i) => i.state)).toEqual(['unacknowledged'])
  })
  it('never lasts longer than the definition allows', () => {
    const board = emptyBoard()
    put(board, 0, 'co-high', 'abnormal', { delays: { onS: 0, offS: 0 } })
    order(board, alarmTable, 0, 'shelve', 'co-high', null, 10_000)
    expect(boardView(board)[0]?.shelvedUntil).toBe(alarmTable['co-high'].longestShelveMin * minute)
  })
  it('hides what was never acknowledged only until it is taken down again', () => {
    const board = emptyBoard()
    put(board, 0, 'stop-overdue', 'abnormal', { delays: { onS: 0, offS: 0 } })
    order(board, alarmTable, 0, 'shelve', 'stop-overdue', null, 10)
    put(board, 1000, 'stop-overdue', 'normal')
    expect(order(board, alarmTable, 2000, 'unshelve', 'stop-overdue', null).map((i) => i.state)).toEqual(['normal'])
  })
  it('taken down by hand leaves no end behind that would wake it', () => {
    const board = emptyBoard()
    put(board, 0, 'stop-overdue', 'abnormal', { delays: { onS: 0, offS: 0 } })
    order(board, alarmTable, 0, 'shelve', 'stop-overdue', null, 10)
    order(board, alarmTable, 1000, 'unshelve', 'stop-overdue', null)
    expect(boardView(board)[0]?.shelvedUntil).toBeNull()
    expect(board.nextAt).toBe(-1)
  })
})

describe('suppression by phase', () => {
  it('keeps the condenser silent before vapour flows, and speaks when it does', () => {
    const board = emptyBoard()
    const now = { delays: { onS: 0, offS: 0 } }
    expect(put(board, 0, 'condenser-hot', 'abnormal', { ...now, phase: 'kindling' })).toBeNull()
    expect(stateOf(board, 'condenser-hot')).toBe('suppressed')
    expect(put(board, 1000, 'condenser-hot', 'abnormal', { ...now, phase: 'breakdown' })).toBe('unacknowledged')
  })
  it('lets nothing out that ended while it was hidden', () => {
    const board = emptyBoard()
    put(board, 0, 'condenser-hot', 'abnormal', { phase: 'kindling', delays: { onS: 0, offS: 0 } })
    expect(put(board, 1000, 'condenser-hot', 'normal', { phase: 'breakdown' })).toBeNull()
    expect(stateOf(board, 'condenser-hot')).toBe('normal')
  })
})

describe('first-out', () => {
  it('marks the cause and not what follows from it, group by group', () => {
    const board = emptyBoard()
    const now = { delays: { onS: 0, offS: 0 } }
    put(board, 0, 'fire-dying', 'abnormal', now)
    put(board, 1000, 'fire-out', 'abnormal', now)
    put(board, 2000, 'condenser-hot', 'abnormal', now)
    expect(boardView(board).map((a) => [a.alarm, a.firstOut])).toEqual([
      ['fire-dying', true],
      ['fire-out', false],
      ['condenser-hot', true],
    ])
  })
  it('is not taken by one that nobody could hear', () => {
    const board = emptyBoard()
    const now = { delays: { onS: 0, offS: 0 } }
    put(board, 0, 'fire-out', 'abnormal', { ...now, quiet: true })
    put(board, 1000, 'fire-dying', 'abnormal', now)
    expect(boardView(board).map((a) => [a.alarm, a.state, a.firstOut])).toContainEqual(['fire-dying', 'unacknowledged', true])
  })
})

describe('flood guard', () => {
  it('goes on at five in ten minutes and ends at four', () => {
    const board = emptyBoard()
    const now = { delays: { onS: 0, offS: 0 } }
    for (let i = 0; i < 10; i++) put(board, i * minute, 'probe-fault', 'abnormal', { ...now, channel: `yard/n${i}/wall` })
    expect(board.flood).toBe(true)
    ebb(board, 14.5 * minute) // those of minutes 5 to 9
    expect(board.flood).toBe(true)
    ebb(board, 15.5 * minute)
    expect(board.flood).toBe(false)
  })
  it('holds notices back from ten alarms in ten minutes until there are fewer than five, and loses none (instrument facts 6.4)', () => {
    const board = emptyBoard()
    const now = { delays: { onS: 0, offS: 0 } }
    for (let i = 0; i < 10; i++) put(board, i * 1000, 'probe-fault', 'abnormal', { ...now, channel: `yard/n${i}/wall` })
    expect(board.flood).toBe(true)
    expect(put(board, 11_000, 'probe-fault', 'abnormal', { ...now, channel: 'yard/n20/wall' })).toBeNull()
    expect(put(board, 12_000, 'fire-dying', 'abnormal', now)).toBe('unacknowledged')
    ebb(board, 11 * minute + 12_000)
    expect(board.flood).toBe(false)
    expect(put(board, 11 * minute + 13_000, 'probe-fault', 'abnormal', { ...now, channel: 'yard/n20/wall' })).toBe('unacknowledged')
  })
})

describe('an alarm of people', () => {
  it('sounds again when it was acknowledged and nothing happened', () => {
    const board = emptyBoard()
    put(board, 0, 'flame-inside', 'abnormal', { delays: { onS: 0, offS: 0 } })
    order(board, alarmTable, 1000, 'acknowledge', 'flame-inside', null)
    expect(tickBoard(board, alarmTable, 600_000)).toEqual([])
    expect(tickBoard(board, alarmTable, 601_000).map((i) => i.state)).toEqual(['unacknowledged'])
  })
  it('takes an order for one channel only', () => {
    const board = emptyBoard()
    for (const channel of ['y/n/wall', 'y/n/outlet']) put(board, 0, 'probe-fault', 'abnormal', { channel, delays: { onS: 0, offS: 0 } })
    order(board, alarmTable, 1, 'acknowledge', 'probe-fault', 'y/n/wall')
    expect([stateOf(board, 'probe-fault', 'y/n/wall'), stateOf(board, 'probe-fault', 'y/n/outlet')]).toEqual([
      'acknowledged',
      'unacknowledged',
    ])
  })
})
