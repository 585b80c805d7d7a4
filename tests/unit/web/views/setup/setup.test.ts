import { describe, expect, it } from 'vitest'
import type { SetupAnswer } from '../../../../../server/contract/setup.ts'
import { defaultKilnConfig } from '../../../../../server/contract/kiln-defaults.ts'
import { boxAddress, firstReading } from '../../../../../web/src/views/setup/first-reading.ts'
import { boundsOf, byField } from '../../../../../web/src/views/setup/form.ts'
import { kilnProblems, nextKilnId } from '../../../../../web/src/views/setup/kiln-form.ts'
import { refusalLines } from '../../../../../web/src/views/setup/node-words.ts'
import { calibrationOf, isStill, rounded } from '../../../../../web/src/views/setup/points.ts'
import { doneSteps, neighbours, nextOpen } from '../../../../../web/src/views/setup/progress.ts'
import { assign, missingRoles } from '../../../../../web/src/views/setup/roles.ts'
import { verdictOf } from '../../../../../web/src/views/setup/verdict.ts'
import { en } from '../../../../../web/src/words/setup/en.ts'

const box = { addresses: ['192.168.4.1'], mqttPort: 1883, root: 'firing', site: 'yard' }
const answer: SetupAnswer = {
  ...{ now: 0, offsetMin: 0, clockSure: true, clock: null, box, probes: [], kilns: {}, beeps: [], rehearsal: null, heard: [] },
}

describe('roles', () => {
  const current = { 'yard/n1/a': 'wall', 'yard/n1/b': 'outlet' } as const
  it('two touches swap two probes', () => {
    expect(assign(current, 'yard/n1/a', 'outlet')).toEqual({
      patch: { 'yard/n1/a': 'outlet', 'yard/n1/b': 'wall' },
      other: { channel: 'yard/n1/b', role: 'wall' },
    })
  })
  it('a new probe takes the place of an old one, which then has none', () => {
    expect(assign(current, 'yard/n2/x', 'wall').patch).toEqual({ 'yard/n2/x': 'wall', 'yard/n1/a': null })
    expect(assign(current, 'yard/n2/x', 'firebox')).toEqual({ patch: { 'yard/n2/x': 'firebox' }, other: null })
  })
  it('says what is still missing', () => {
    expect(missingRoles(current)).toEqual(['firebox'])
  })
})

describe('the first reading by hand', () => {
  // firmware-notes/README.md, "First reading in a few minutes"
  it('is the line of the firmware notes with this box in it', () => {
    expect(firstReading(box, '192.168.4.1').replace(/ \\\n +/g, ' ')).toBe(
      `mosquitto_pub -h 192.168.4.1 -q 1 -t firing/1/yard/try/readings -m '{"firebox":20,"wall":21,"outlet":22}'`,
    )
    expect(firstReading({ ...box, mqttPort: 1884 }, 'x')).toContain(' -p 1884 ')
  })
  it('names an address that others reach', () => {
    expect(boxAddress(box, 'localhost')).toBe('192.168.4.1')
    expect(boxAddress(box, '10.0.0.7')).toBe('10.0.0.7')
    expect(boxAddress({ ...box, addresses: [] }, '127.0.0.1')).toBeNull()
  })
})

describe('calibration', () => {
  // instrument facts 3.2 and 3.3: ice 0 °C, boiling 100 °C at the sea; slope off by at most 3 %, offset by at most 8 K, points 50 K apart
  it('ice and boiling give slope and offset, one of them only the offset', () => {
    const both = calibrationOf({ iceC: 0.5, boilingC: 99.5 }, 99.97)
    expect(typeof both === 'object' && both ? rounded(both) : both).toEqual({ gain: 1.0098, offset: -0.5 })
    expect(calibrationOf({ iceC: 0.5, boilingC: null }, 99.97)).toEqual({ gain: 1, offset: -0.5 })
    expect(calibrationOf({ iceC: null, boilingC: null }, 99.97)).toBeNull()
  })
  it('what is off too far is a fault and no calibration', () => {
    expect(calibrationOf({ iceC: 9, boilingC: null }, 99.97)).toBe('offset-too-far')
    expect(calibrationOf({ iceC: 0, boilingC: 90 }, 99.97)).toBe('gain-too-far')
    expect(calibrationOf({ iceC: 0, boilingC: 20 }, 99.97)).toBe('points-too-near')
  })
  it('waits until the number stands still', () => {
    expect(isStill({ meanC: 0, spreadK: 0.4, forS: 20 })).toBe(true)
    expect(isStill({ meanC: 0, spreadK: 0.4, forS: 10 })).toBe(false)
    expect(isStill({ meanC: 0, spreadK: 0.6, forS: 30 })).toBe(false)
  })
})

describe('the kiln', () => {
  const litres = (one: number) => `${one} L`
  it('says every problem at once', () => {
    expect(kilnProblems({ name: 'x'.repeat(81), litres: 5 }, en, litres)).toEqual({
      name: 'This is too long.',
      volumeL: 'Enter a number from 20 L to 20000 L.',
    })
    expect(kilnProblems({ name: '', litres: null }, en, litres)).toEqual({ volumeL: 'Enter a number.' })
    expect(kilnProblems({ name: '', litres: NaN }, en, litres)).toEqual({ volumeL: 'Enter a number.' })
    expect(kilnProblems({ name: 'Upper', litres: 200 }, en, litres)).toEqual({})
  })
  it('one more gets a short name that is free', () => {
    expect(nextKilnId(['kiln-1'])).toBe('kiln-2')
    expect(nextKilnId(['kiln-1', 'kiln-3'])).toBe('kiln-4')
  })
})

describe('how far the first run is', () => {
  const nothing = { answer, config: defaultKilnConfig(), nodes: 0, chosen: false, paired: false }
  it('is told from what is', () => {
    expect(Object.values(doneSteps(nothing)).some(Boolean)).toBe(false)
    const roles = { 'yard/n/a': 'firebox', 'yard/n/b': 'wall', 'yard/n/c': 'outlet' } as const
    const config = { ...defaultKilnConfig(), name: 'Upper', roles, calibration: { 'yard/n/a': { gain: 1, offset: 0 } } }
    const word = { tablet: true, buzzer: null, told: null, at: 0 }
    const heard = [{ what: 'sound', ...word } as const, { what: 'fire', ...word } as const]
    const all = doneSteps({ answer: { ...answer, clock: { right: true, at: 0 }, heard }, config, nodes: 1, chosen: true, paired: true })
    expect(Object.entries(all).filter(([, done]) => !done)).toEqual([])
    expect(nextOpen(all)).toBeNull()
    expect(nextOpen({ ...all, roles: false })).toBe('roles')
  })
  it('a clock that was confirmed and has jumped since counts no more', () => {
    const jumped = { ...answer, clock: { right: true, at: 0 }, clockSure: false }
    expect(doneSteps({ ...nothing, answer: jumped }).clock).toBe(false)
  })
  it('each step leads to the next and back', () => {
    expect(neighbours('language')).toEqual({ before: null, after: 'clock' })
    expect(neighbours('rehearsal')).toEqual({ before: 'tablet', after: null })
  })
})

describe('a rehearsal', () => {
  const word = { what: 'fire', tablet: true, buzzer: true, told: 'fire-dying', at: 0 } as const
  it('is good only where it was told and heard', () => {
    expect(verdictOf('fire', word)).toBe('good')
    expect(verdictOf('fire', { ...word, buzzer: null })).toBe('partly')
    expect(verdictOf('fire', { ...word, buzzer: false })).toBe('bad')
    expect(verdictOf('fire', { ...word, tablet: false })).toBe('bad')
    expect(verdictOf('fire', { ...word, told: null })).toBe('bad')
    expect(verdictOf('fire', undefined)).toBe('never')
  })
  it('of the silent box needs a buzzer', () => {
    const silent = { ...word, what: 'service', tablet: null, told: null } as const
    expect(verdictOf('service', silent)).toBe('good')
    expect(verdictOf('service', { ...silent, buzzer: null })).toBe('bad')
  })
})

describe('the form', () => {
  it('says what to enter where the bounds can say it', () => {
    expect(boundsOf({ minimum: 20, maximum: 20_000 })).toEqual({ low: 20, high: 20_000 })
    expect(boundsOf({ minimum: 0, maximum: 2_147_483_647 })).toBeNull()
    expect([...byField([{ path: 'kilns.0.volumeL', what: 'too small' }])]).toEqual([['kilns.0.volumeL', 'too small']])
  })
  it('refusals stand in words, with how often', () => {
    expect(refusalLines({ 'unknown-unit': 3, 'not-yet-known': 1 }, en)).toEqual([
      'Turned away: the unit is not known (3)',
      'Turned away: not-yet-known (1)',
    ])
  })
})
