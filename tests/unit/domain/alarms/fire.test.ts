import { describe, expect, it } from 'vitest'
import { defaultLimits } from '../../../../server/contract/fold.ts'
import { dyingC, fireIsWanted, judgeFire, judgeVent, judgeWall, startFire, stepFire } from '../../../../server/domain/alarms/fire.ts'
import { judgeSealed } from '../../../../server/domain/alarms/sealed.ts'
import { at, sceneOf, steady, toldOf, type Setting } from './scene.ts'

// The limits 350 and 200 °C and the shares are common practice, no source; the dead-band of instrument facts 6.3.
const { fireLowC, fireOutC } = defaultLimits

describe('what the fire usually is', () => {
  const watched = (values: number[], setting: Setting = {}) => {
    const fire = startFire()
    stepFire(fire, sceneOf({ ...setting, past: { firebox: values } }).look)
    return fire
  }
  it('is its upper quartile, not its middle', () => {
    expect(watched([...steady(400, 60), ...steady(600, 60)]).usualC).toBe(600)
    expect(watched([...steady(400, 100), ...steady(600, 20)]).usualC).toBe(400)
  })
  it('counts once it has burnt clear of its low mark for five minutes', () => {
    expect(watched(steady(fireLowC + 30, 5)).established).toBe(true)
    expect(watched(steady(fireLowC + 29, 5)).established).toBe(false)
    expect(watched(steady(fireLowC + 30, 4)).established).toBe(false)
    expect(watched([fireLowC - 1, ...steady(600, 4)]).established).toBe(false)
  })
})

describe('a dying fire', () => {
  const limit = (usualC: number | null) => {
    const scene = sceneOf({ fire: { usualC } })
    return dyingC(scene.fire, scene.look)
  }
  it('has fallen to six tenths of its usual, within the limits of the kiln', () => {
    expect([limit(null), limit(600), limit(900), limit(300)]).toEqual([fireLowC, 360, fireLowC + 50, fireOutC + 50])
  })
  const signs = (celsius: number, setting: Setting = {}) => {
    const told = toldOf((scene, tell) => judgeFire(scene, celsius, tell), setting)
    return [told['fire-dying']?.sign, told['fire-out']?.sign]
  }
  it('is told at its limit and ends 15 K over it; out is told apart', () => {
    expect(signs(360)).toEqual(['abnormal', 'normal'])
    expect(signs(361)).toEqual(['between', 'normal'])
    expect(signs(375)).toEqual(['between', 'normal'])
    expect(signs(376)).toEqual(['normal', 'normal'])
    expect(signs(fireOutC)).toEqual(['abnormal', 'abnormal'])
    expect(signs(fireOutC + 15)).toEqual(['abnormal', 'between'])
  })
  it('is none before there was one, and what was told still ends', () => {
    const unlit = { fire: { established: false } }
    expect(signs(100, unlit)).toEqual([undefined, undefined])
    expect(signs(700, { ...unlit, items: [{ alarm: 'fire-dying', on: true, state: 'unacknowledged' }] })).toEqual(['normal', 'normal'])
    expect(signs(700, { ...unlit, items: [{ alarm: 'fire-out', on: true, state: 'unacknowledged' }] })).toEqual(['normal', 'normal'])
  })
  it('is wanted until feeding stops or sealing is due, and not where the charge runs by itself', () => {
    const wanted = (setting: Setting) => fireIsWanted(sceneOf(setting))
    expect(wanted({})).toBe(true)
    expect(wanted({ facts: { stoppedFeedingAt: at } })).toBe(false)
    expect(wanted({ facts: { sealedAt: at } })).toBe(false)
    expect(wanted({ calls: { seal: 'due' } })).toBe(false)
    expect(wanted({ config: { way: 'let-run' } })).toBe(true)
    expect(wanted({ config: { way: 'let-run' }, calls: { 'stop-feeding': 'due' } })).toBe(false)
    expect(wanted({ config: { way: 'kept' }, calls: { 'stop-feeding': 'due' } })).toBe(true)
    const quiet = toldOf((scene, tell) => judgeFire(scene, 100, tell), { calls: { seal: 'due' } })
    expect([quiet['fire-dying']?.quiet, quiet['fire-out']?.quiet]).toEqual([true, true])
  })
})

// Steepest tight firing 240 K/h, on trials; no source.
describe('flame inside', () => {
  const climbs = (perMinute: number, last = 200) =>
    toldOf(judgeWall, { past: { wall: Array.from({ length: 10 }, (_, n) => last - (9 - n) * perMinute) } })['flame-inside']!.sign
  it('is a hot wall that climbs by more than 600 K an hour', () => {
    expect([climbs(10.1), climbs(9.9)]).toEqual(['abnormal', 'normal'])
    expect([climbs(12, 131), climbs(12, 120)]).toEqual(['abnormal', 'normal'])
    expect(toldOf(judgeWall, {})['flame-inside']!.sign).toBe('unknown')
  })
})

// Trade facts 9.3 A; the shares are common practice, no source.
describe('a choked vent', () => {
  const vent = (smoke: number, more: { before?: number; fire?: number; air?: number } = {}) => {
    const { before = 130, fire = 600, air = 30 } = more
    const past = {
      smoke: [...steady(before, 15), ...steady(smoke, 10)],
      firebox: [...steady(600, 15), ...steady(fire, 10)],
      ambient: steady(air, 25),
    }
    return toldOf(judgeVent, { past })['vent-choked']!.sign
  }
  it('has lost half of what its smoke stood over the air, beside a fire that burns on', () => {
    expect([vent(79), vent(81)]).toEqual(['abnormal', 'normal'])
    expect([vent(40, { fire: 545 }), vent(40, { fire: 535 })]).toEqual(['abnormal', 'normal'])
  })
  it('cannot be told where the smoke was hardly warmer than the air', () => {
    expect([vent(35, { before: 56 }), vent(35, { before: 55 })]).toEqual(['abnormal', 'unknown'])
  })
})

describe('a sealed kiln', () => {
  const rose = [{ code: 'rose' }]
  const other = [{ code: 'other' }]
  const sealed = (cooling: NonNullable<Setting['cooling']> | null, setting: Setting = {}) => {
    const told = toldOf(judgeSealed, { past: { wall: steady(80) }, cooling, ...setting })
    return [told['air-leak'], told['reignition'], told['wall-off']].map((one) => one && [one.sign, ...one.because.map(({ code }) => code)])
  }
  const none = { rose: null, slow: null, relit: null, burnsOpen: null, opened: null, wallOff: null }
  const opened = {} as NonNullable<NonNullable<Setting['cooling']>['opened']>
  it('that is open says nothing of what it holds, and none says nothing at all', () => {
    expect(sealed(null)).toEqual([undefined, undefined, undefined])
    expect(sealed(none)).toEqual([['normal'], ['normal'], ['normal']])
  })
  it('lets air in by each of three signs: it rose, it falls too slowly, the model says so', () => {
    expect(sealed({ ...none, rose })[0]).toEqual(['abnormal', 'rose'])
    expect(sealed({ ...none, slow: other })[0]).toEqual(['abnormal', 'other'])
    expect(sealed(none, { modelLeak: true })[0]).toEqual(['abnormal', 'model-says-leak'])
  })
  it('burns again, shut or open; while it stands open that is no leak', () => {
    expect(sealed({ ...none, relit: rose, slow: other })).toEqual([['abnormal', 'other'], ['abnormal', 'rose'], ['normal']])
    expect(sealed({ ...none, burnsOpen: rose, opened, slow: other })).toEqual([['normal'], ['abnormal', 'rose'], ['normal']])
    expect(sealed({ ...none, opened, slow: other })[0]).toEqual(['abnormal', 'other'])
  })
  it('whose wall is not heard stays as it was judged, and what is known of it is told all the same', () => {
    const silent = { past: {} }
    expect(sealed(none, silent)).toEqual([['unknown'], ['unknown'], ['normal']])
    expect(sealed({ ...none, relit: rose }, silent)[1]).toEqual(['abnormal', 'rose'])
    expect(sealed(none, { ...silent, modelLeak: true })[0]).toEqual(['abnormal', 'model-says-leak'])
  })
  it('whose wall probe came off is told of that', () => expect(sealed({ ...none, wallOff: other })[2]).toEqual(['abnormal', 'other']))
})
