import { describe, expect, it } from 'vitest'
import { emptyBoard, tell, tickBoard, type AlarmBoard, type Telling } from '../../../../server/domain/alarms/board.ts'
import type { AlarmTable } from '../../../../server/domain/alarms/definition.ts'
import { above, below } from '../../../../server/domain/alarms/limit.ts'
import { alarmTable } from '../../../../server/domain/alarms/tables/definitions.ts'

interface Setting {
  deadBand: number
  onDelayS: number
  offDelayS: number
}

/** Plays one value a second through a high alarm at 60 and tells when it is raised and when it returns, s. */
function play(values: (t: number) => number, untilS: number, { deadBand, onDelayS, offDelayS }: Setting): string[] {
  const table: AlarmTable = {
    ...alarmTable,
    'condenser-hot': { ...alarmTable['condenser-hot'], onDelayS, offDelayS, returnsByItself: true, quietIn: [] },
  }
  const board: AlarmBoard = emptyBoard()
  const events: string[] = []
  const say = (state: string, t: number): void => void events.push(`${state === 'unacknowledged' ? 'ALARM' : 'RTN'} at ${t}`)
  for (let t = 0; t <= untilS; t++) {
    const value = values(t)
    const telling: Telling = { alarm: 'condenser-hot', channel: null, sign: above(value, 60, deadBand), because: [] }
    const item = tell(board, table, t * 1000, 'vinegar', telling)
    if (item !== null) say(item.state, t)
    for (const ticked of tickBoard(board, table, t * 1000)) say(ticked.state, t)
  }
  return events
}

const usual: Setting = { deadBand: 3, onDelayS: 10, offDelayS: 20 }

// The vectors of instrument facts 6.3, word for word.
describe('dead-band and delays', () => {
  it('50 until t 4, 62 from t 5 to 59, 50 from 60', () => {
    expect(play((t) => (t >= 5 && t < 60 ? 62 : 50), 120, usual)).toEqual(['ALARM at 15', 'RTN at 80'])
  })
  it('70 only for t 5..12', () => {
    expect(play((t) => (t >= 5 && t <= 12 ? 70 : 50), 120, usual)).toEqual([])
  })
  it('exactly 60 from t 5', () => {
    expect(play((t) => (t >= 5 ? 60 : 50), 120, usual)).toEqual(['ALARM at 15'])
  })
  it('62 for t 5..29 then exactly 57.0', () => {
    expect(play((t) => (t < 5 ? 50 : t <= 29 ? 62 : 57), 120, usual)).toEqual(['ALARM at 15'])
  })
  it('62 for t 5..29 then 56.9', () => {
    expect(play((t) => (t < 5 ? 50 : t <= 29 ? 62 : 56.9), 120, usual)).toEqual(['ALARM at 15', 'RTN at 50'])
  })
  it('alternating 58.5/61 each second, no delays: one alarm; with dead-band 0 it chatters', () => {
    const alternating = (t: number): number => (t < 5 ? 50 : t % 2 === 1 ? 61 : 58.5)
    expect(play(alternating, 99, { deadBand: 3, onDelayS: 0, offDelayS: 0 })).toEqual(['ALARM at 5'])
    expect(play(alternating, 99, { deadBand: 0, onDelayS: 0, offDelayS: 0 })).toHaveLength(95)
  })
})

describe('signs', () => {
  it('a low limit is the mirror of a high one', () => {
    expect([200, 214, 216].map((v) => below(v, 200, 15))).toEqual(['abnormal', 'between', 'normal'])
  })
  it('what was not measured cannot be judged', () => {
    expect(above(null, 60, 3)).toBe('unknown')
    expect(below(undefined, 60, 3)).toBe('unknown')
  })
})
