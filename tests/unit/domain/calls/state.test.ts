import { describe, expect, it } from 'vitest'
import { startCalls, stepCalls, type Proposal } from '../../../../server/domain/calls/state.ts'

const due: Proposal = { due: true, withdraw: false, because: [{ code: 'smoke-over', value: 81, limit: 80 }] }
const quiet: Proposal = { due: false, withdraw: false, because: [] }
const back: Proposal = { due: false, withdraw: true, because: [{ code: 'seen-drip-clear' }] }

describe('a call', () => {
  it('goes from not yet to due, is taken back, and may come again', () => {
    const calls = startCalls(0)
    const put = (proposal: Proposal, at: number): string[] => stepCalls(calls, { 'start-collecting': proposal }, {}, at).map((c) => c.state)
    expect(put(quiet, 1)).toEqual([])
    expect(put(back, 2)).toEqual([])
    expect(put(due, 3)).toEqual(['due'])
    expect(put(due, 4)).toEqual([])
    expect(put(quiet, 5)).toEqual([])
    expect(calls['start-collecting']).toMatchObject({ state: 'due', since: 3, because: due.because })
    expect(put(back, 6)).toEqual(['withdrawn'])
    expect(put(back, 7)).toEqual([])
    expect(put(due, 8)).toEqual(['due'])
  })

  it('that was done stands, whatever is proposed, at the time it was done', () => {
    const calls = startCalls(0)
    expect(stepCalls(calls, { seal: due }, { seal: 40 }, 50).map((c) => [c.call, c.state])).toEqual([['seal', 'done']])
    expect(stepCalls(calls, { seal: back }, { seal: 40 }, 60)).toEqual([])
    expect(calls.seal).toMatchObject({ state: 'done', since: 40 })
  })

  it('is not yet again when the log is corrected', () => {
    const calls = startCalls(0)
    stepCalls(calls, {}, { seal: 40 }, 50)
    expect(stepCalls(calls, { seal: quiet }, {}, 60)).toEqual([])
    expect(calls.seal).toMatchObject({ state: 'not-yet', since: 60 })
  })

  it('carries no forecast once it is due', () => {
    const calls = startCalls(0)
    calls.seal.forecast = { earliest: 1, likely: 2, latest: 3 }
    stepCalls(calls, { seal: due }, {}, 1)
    expect(calls.seal.forecast).toBeNull()
  })
})
