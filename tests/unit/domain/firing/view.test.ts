import { describe, expect, it } from 'vitest'
import { emptyHistory, trendOver, write } from '../../../../server/domain/firing/history.ts'
import { drum, firing, lightAt, lit, play, rulesOnly, withoutSmoke } from './bench.ts'

const three = withoutSmoke(drum)
const minuteMs = 60_000

describe('the slope that is shown', () => {
  it('is that of half an hour: a fire that falls between two logs while the run climbs is told as climbing', () => {
    // up 60 an hour, and down 10 in the last five minutes of each quarter
    const swing = (m: number): number => 300 + m + (m % 15 < 10 ? (m % 15) * 1.5 : 15 - ((m % 15) - 10) * 3)
    const { view } = play(firing({ ...three, firebox: (m) => (m < 0 ? 20 : swing(m)) }, [lit], -5, 149))
    const firebox = view.channels.find((c) => c.role === 'firebox')
    expect(firebox?.slopePerH ?? 0).toBeGreaterThan(20)
    expect(firebox?.slopePerH ?? 0).toBeLessThan(100)
  })
  it('is known with a deviation that covers the truth', () => {
    const history = emptyHistory()
    for (let m = 0; m < 60; m++) write(history, lightAt + m * minuteMs, 100 + 0.5 * m + 2 * Math.sin(m * 2.3))
    const trend = trendOver(history, 30)
    expect(Math.abs((trend?.slopePerH ?? NaN) - 30)).toBeLessThan(2 * (trend?.slopeSd ?? NaN))
    expect(trend?.slopeSd).toBeLessThan(10)
  })
  it('waits for a quarter of an hour of minutes', () => {
    const history = emptyHistory()
    for (let m = 0; m < 14; m++) write(history, lightAt + m * minuteMs, m)
    expect(trendOver(history, 30)).toBeNull()
  })
})

describe('the hands line', () => {
  it('is right at once after sealing: no hint of the fire is left, and no hour is named for the trial opening', () => {
    const { state } = play(firing(drum, [lit], -5, 520))
    const open = { ...drum, firebox: (m: number) => (m > 505 ? 620 - (m - 505) * 8 : (drum.firebox?.(m) ?? null)) }
    const burning = play(firing(open, [lit], -5, 520))
    expect(burning.view.hands).not.toBeNull()
    const at = lightAt + 520 * minuteMs + 1000
    const sealed = rulesOnly.step(burning.state, { seq: 90_000, at, kind: 'act', id: 'seal', doneAt: at, act: { action: 'seal' } }).state
    expect(rulesOnly.view(sealed, at)).toMatchObject({ hands: null, hints: [] })
    expect(state.facts.sealedAt).toBeNull()
  })
  it('says nothing of the opening through a whole night of cooling, until it is due', () => {
    let state = play(firing(drum, [lit, [540, { action: 'seal' }]], -5, 560)).state
    for (const input of firing(drum, [], 560, 1200)) {
      state = rulesOnly.step(state, { ...input, seq: input.seq + 100_000 }).state
      if (input.kind === 'tick' && input.at % 600_000 === 0 && state.calls.open.state === 'not-yet')
        expect(rulesOnly.view(state, input.at).hands).toBeNull()
    }
    expect(state.openNotBefore).not.toBeNull()
  })
})

describe('the command', () => {
  it('follows the bottle as soon as it is logged, put under or taken away', () => {
    const before = play(firing(drum, [lit], -5, 60))
    expect(before.view.command.do).toBe('wait')
    const at = lightAt + 60 * minuteMs + 1000
    const log = (state: typeof before.state, seq: number, action: 'start-collecting' | 'stop-collecting') =>
      rulesOnly.step(state, { seq, at: at + seq, kind: 'act', id: action, doneAt: at, act: { action } }).state
    const collecting = log(before.state, 90_000, 'start-collecting')
    expect(rulesOnly.view(collecting, at).command.do).toBe('collect')
    const taken = log(collecting, 90_001, 'stop-collecting')
    expect(rulesOnly.view(taken, at)).toMatchObject({ firing: { collectingSince: null }, command: { do: 'wait' } })
  })
  it('is to wait as soon as the lighting is logged, before any reading; loaded or not, and nobody is told to load any more', () => {
    for (const loaded of [false, true]) {
      const before = play(firing(drum, loaded ? [[-4, { action: 'load' }]] : [], -5, -1))
      expect(before.view).toMatchObject({ firing: { phase: 'idle' }, command: { do: loaded ? 'light' : 'none' } })
      const at = lightAt - minuteMs + 1000
      const after = rulesOnly.step(before.state, { seq: 90_000, at, kind: 'act', id: 'light', doneAt: at, act: { action: 'light' } }).state
      expect(rulesOnly.view(after, at)).toMatchObject({ firing: { phase: 'kindling' }, command: { do: 'wait' } })
    }
  })
})
