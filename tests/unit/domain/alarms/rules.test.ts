import { describe, expect, it } from 'vitest'
import { defaultLimits } from '../../../../server/contract/fold.ts'
import { costs, hotLimitC, judgeOutlet } from '../../../../server/domain/alarms/condenser.ts'
import { judgeCo, judgeEvery10s, judgeEveryMinute } from '../../../../server/domain/alarms/rules.ts'
import { avoidableShare } from '../../../../server/domain/condenser/loss.ts'
import { at, minute, sceneOf, steady, toldOf, type Setting } from './scene.ts'

const { condenserWarningC, condenserNoticeC, condenserDeadBandK, condenserOnDelayS, condenserOffDelayS } = defaultLimits
const wetted = { wetC: 40, wettedAt: at - 60 * minute }
const outlet = (celsius: number, setting: Setting = {}) =>
  toldOf((scene, tell) => judgeOutlet(scene, celsius, tell), {
    ...setting,
    condenser: { ...wetted, ...setting.condenser },
  })['condenser-hot']!

// Instrument facts 8.3 gives notice and warning; what is added to what wet cloths reach is common practice, no source.
describe('the limit of a hot condenser', () => {
  const limit = (setting: Setting) => hotLimitC(sceneOf(setting))
  it('is what no cloth can hold while the load is unknown', () => expect(limit({})).toBe(condenserWarningC + 20))
  it('is 28 K over wet cloths, and 36 once collecting has stopped', () => {
    expect(limit({ condenser: { wetC: 40 } })).toBe(68)
    expect(limit({ condenser: { wetC: 40 }, calls: { 'stop-collecting': 'due' } })).toBe(76)
    expect(limit({ condenser: { wetC: 40 }, calls: { 'stop-collecting': 'done' } })).toBe(76)
  })
  it('is never under the warning of the kiln', () => expect(limit({ condenser: { wetC: 20 } })).toBe(condenserWarningC))
  it('is 1.4 of the tops that this operator lets happen', () => {
    expect(limit({ condenser: { wetC: 40, tops: [30, 30] } })).toBe(40 + 1.4 * 30)
    expect(limit({ condenser: { wetC: 40, tops: [30] } })).toBe(68)
  })
})

describe('a hot condenser', () => {
  it('is judged by the dead-band and the delays of the kiln, and by nothing before the first wetting', () => {
    expect([68, 67.9, 66, 65.9].map((celsius) => outlet(celsius).sign)).toEqual(['abnormal', 'between', 'between', 'normal'])
    expect(condenserDeadBandK).toBe(2)
    expect(outlet(90, { condenser: { wettedAt: null } }).sign).toBe('unknown')
    expect(outlet(70).delays).toEqual({ onS: condenserOnDelayS, offS: condenserOffDelayS })
  })
  it('is quiet before the start, unless the phase says that vapour comes', () => {
    expect(outlet(70, { phase: 'breakdown' }).quiet).toBe(true)
    for (const phase of ['vinegar', 'tar', 'clearing'] as const) expect(outlet(70, { phase }).quiet).toBe(false)
    expect(outlet(70, { phase: 'breakdown', calls: { 'start-collecting': 'due' } }).quiet).toBe(false)
  })
  it('is quiet while the next wetting is about to come by habit', () => {
    const habit = (ago: number) => outlet(70, { condenser: { pausesMin: [12, 12, 12], wettedAt: at - ago * minute } }).quiet
    expect([10, 15, 16].map(habit)).toEqual([true, true, false]) // 1.3 of 12
  })
  it('is quiet where that of dry cloths stands, and not where nobody can hear that one', () => {
    const beside = (item: NonNullable<Setting['items']>[number]) => outlet(70, { items: [{ alarm: 'condenser-warm', ...item }] }).quiet
    expect(beside({ on: true, state: 'unacknowledged' })).toBe(true)
    expect(beside({ on: true, state: 'suppressed' })).toBe(false)
    expect(beside({ on: true, state: 'out-of-service' })).toBe(false)
    expect(beside({ on: false, state: 'normal' })).toBe(false)
  })
  it('waits for what passes by itself, unless it is far over for long or stands already', () => {
    const passing = { passing: true }
    expect(outlet(70, { condenser: passing }).sign).toBe('between')
    expect(outlet(70, { condenser: { ...passing, farMin: 8 } }).sign).toBe('abnormal')
    expect(outlet(70, { condenser: { ...passing, farMin: 7 } }).sign).toBe('between')
    expect(outlet(70, { condenser: passing, items: [{ alarm: 'condenser-hot', on: true, state: 'acknowledged' }] }).sign).toBe('abnormal')
  })
  const told = (ago: number) => [{ alarm: 'condenser-hot', on: true, state: 'unacknowledged', told: at - ago * minute } as const]
  it('ends with a wetting that was seen after it, for as long as water takes', () => {
    const seen = (ago: number, toldAgo: number) => outlet(70, { items: told(toldAgo), condenser: { seenWettedAt: at - ago * minute } }).sign
    expect([seen(4, 10), seen(5, 10), seen(4, 3)]).toEqual(['normal', 'abnormal', 'abnormal'])
  })
  it('is told again after twenty minutes without an answer, where the cloths are as dry as can be', () => {
    const again = (ago: number, dryness: number) => outlet(70, { items: told(ago), condenser: { dryness } }).again
    expect([again(20, 10), again(19.9, 10), again(23, 9.9)]).toEqual([true, false, false])
  })
  it('is told again where a wetting after it was in vain', () => {
    const again = (checked: number, helped: boolean | null) =>
      outlet(70, { items: told(10), condenser: { checkedWettingAt: at - checked * minute, helped } }).again
    expect([again(8, false), again(8, true), again(8, null), again(11, false)]).toEqual([true, false, false, false])
  })
  it('costs a range: the least of the share with the least of the flow, the most with the most', () => {
    const { low, high } = avoidableShare(70, 40)
    const [least, most, litresLeast, litresMost] = costs(sceneOf({ condenser: { wetC: 40 } }), 70)
    expect([least!.value, most!.value]).toEqual([expect.closeTo(low, 3), expect.closeTo(high, 3)])
    expect([litresLeast!.value, litresMost!.value]).toEqual([expect.closeTo(2 * low, 2), expect.closeTo(6 * high, 2)])
    expect(low).toBeLessThan(high)
  })
})

describe('dry cloths', () => {
  const dry = { ...wetted, dryness: 14, dryMin: 14, wettedAt: at - 30 * minute }
  const warm = (setting: Setting = {}) =>
    toldOf(judgeEveryMinute, { past: { outlet: steady(60) }, ...setting, condenser: { ...dry, ...setting.condenser } })['condenser-warm']
  it('are told with how long they have been dry, over the notice of the kiln and what wet ones reach', () => {
    expect(warm()).toMatchObject({ sign: 'abnormal', quiet: false, because: [{ limit: 51, forS: 14 * 60 }, {}, {}, {}, {}] })
    expect(condenserNoticeC).toBeLessThan(51)
  })
  it('are not judged while the load is unknown, and no more once the outlet is back', () => {
    expect(warm({ condenser: { wetC: null } })).toBeUndefined()
    expect(warm({ condenser: { dryness: 3 } })?.sign).toBe('between')
    expect(warm({ condenser: { dryness: 0, dryMin: 0 } })?.sign).toBe('normal')
  })
  it('wait for what passes by itself', () => expect(warm({ condenser: { passing: true } })?.sign).toBe('between'))
  it('are quiet before the start, and where the hot alarm says the same or stood a moment ago', () => {
    expect(warm({ phase: 'breakdown' })?.quiet).toBe(true)
    const hot = (item: NonNullable<Setting['items']>[number]) => warm({ items: [{ alarm: 'condenser-hot', ...item }] })?.quiet
    expect(hot({ on: true, state: 'unacknowledged' })).toBe(true)
    expect(hot({ state: 'normal', since: at - 9 * minute, told: at - 20 * minute })).toBe(true)
    expect(hot({ state: 'normal', since: at - 10 * minute, told: at - 20 * minute })).toBe(false)
    // seen to be abnormal, and never told
    expect(hot({ state: 'normal', since: at - minute, told: null })).toBe(false)
    expect(hot({ on: true, state: 'suppressed', since: at - 60 * minute })).toBe(false)
  })
})

// 35 ppm caution, 200 leave: trade facts 7.1.2
describe('carbon monoxide', () => {
  const co = (ppm: number) => toldOf((scene, tell) => judgeCo(scene, ppm, tell), {})['co-high']!
  it('is told from 35 ppm and ends a fifth under it', () => {
    expect([34.9, 35, 28, 27.9].map((ppm) => co(ppm).sign)).toEqual(['between', 'abnormal', 'between', 'normal'])
  })
  it('is a warning until 200 ppm and urgent from there, with the limit that was passed', () => {
    expect([35, 199.9, 200].map((ppm) => [co(ppm).priority, co(ppm).because[0]?.limit])).toEqual([
      ['warning', 35],
      ['warning', 35],
      ['urgent', 200],
    ])
  })
})

describe('what the operator has left undone', () => {
  const overdue = (setting: Setting) => {
    const told = toldOf(judgeEvery10s, setting)
    return [told['stop-overdue']!.sign, told['seal-overdue']!.sign]
  }
  const armed = { armedAt: at - 60 * minute }
  it('is told of an armed firing whose call is due, each for itself', () => {
    expect(overdue({ facts: armed, calls: { 'stop-collecting': 'due' } })).toEqual(['abnormal', 'normal'])
    expect(overdue({ facts: armed, calls: { seal: 'due' } })).toEqual(['normal', 'abnormal'])
    expect(overdue({ facts: armed, calls: { 'stop-collecting': 'done', seal: 'withdrawn' } })).toEqual(['normal', 'normal'])
    expect(overdue({ calls: { 'stop-collecting': 'due', seal: 'due' } })).toEqual(['normal', 'normal'])
  })
})
