import { describe, expect, test } from 'vitest'
import type { KilnView } from '../../../../server/contract/live.ts'
import { doubtText } from '../../../../web/src/lib/words/doubt.ts'
import { leakOf } from '../../../../web/src/lib/words/heard.ts'
import { sentenceOf } from '../../../../web/src/lib/words/sentence.ts'
import { Measures } from '../../../../web/src/lib/words/measures.ts'
import { en } from '../../../../web/src/words/en.ts'
import { channel, hour, kiln, minute, noon } from '../../../browser/fake/kiln.ts'
import { scenes } from '../../../browser/fake/scenes.ts'

const measures = new Measures({ language: 'en', temperature: 'C', volume: 'L', mass: 'kg' })
const told = (view: KilnView): string => doubtText(view, en, measures)

test('what stands as a number on the same screen is never said to be unheard', () => {
  const command = { doubts: [{ code: 'no-firebox' }, { code: 'no-wall' }] }
  const heard = [channel('firebox', 649), channel('wall', 52, null, { quality: 'suspect' })]
  expect(told(kiln({ channels: heard, command }))).toContain('Heard too little to judge by: firebox. Doubtful numbers: drum wall.')
  expect(told(kiln({ command }))).toContain('Heard too little to judge by: firebox, drum wall.')
  const lost = [channel('firebox', null, null, { heard: 'lost' }), channel('wall', null, null, { quality: 'fault:open' })]
  expect(told(kiln({ channels: lost, command }))).toContain('Nothing is heard of the firebox. Nothing is heard of the drum wall.')
})

test('once the gap stands open nobody is told any more to press the probe on first, nor what a probe inside would have earned', () => {
  const doubts = [{ code: 'one-wall-probe' }, { code: 'no-core-probe', value: 2 }]
  const crack = { id: 'c', at: noon, doneAt: noon, act: { action: 'crack' as const } }
  const closed = { ...scenes.morning, command: { ...scenes.morning.command, doubts } }
  expect(told(closed)).toContain('press it to the steel first')
  expect(told({ ...closed, firing: { ...closed.firing, acts: [crack] } })).toBe('')
})

test('where no probe is heard no forecast is told: eyes decide, and of a closed kiln no call is promised', () => {
  const lost = (view: KilnView): KilnView => ({
    ...view,
    channels: view.channels.map((one) => ({ ...one, value: null, heard: 'lost' as const, t: noon - 11 * hour })),
  })
  const until = (view: KilnView): string => sentenceOf(view, noon, en, measures).until
  expect(until(scenes.collecting)).toContain('Take the bottle away')
  expect(until(lost(scenes.collecting))).toBe(en.nothingHeard.burning)
  expect(until(scenes.night)).toContain('Not before')
  expect(until(lost(scenes.night))).toBe(en.nothingHeard.sealed)
  // before lighting nothing is driven yet
  expect(until(lost(scenes['before-lighting']))).toBe(en.untils.none)
})

describe('air getting in', () => {
  const { night } = scenes
  const but = (change: Partial<KilnView>): KilnView => ({ ...night, ...change })

  test('no sign is told only where a sign could be seen', () => {
    expect(leakOf(night, noon)).toBe('no-sign')
    // too early, a wall that nobody hears, one that is lost, a firebox that still climbs
    expect(leakOf(but({ firing: { ...night.firing, sealedAt: noon - 2 * minute } }), noon)).toBe('unknown')
    expect(leakOf(but({ command: { ...night.command, doubts: [{ code: 'no-wall' }] } }), noon)).toBe('unknown')
    expect(leakOf(but({ channels: [channel('wall', null, null, { heard: 'lost' })] }), noon)).toBe('unknown')
    expect(leakOf(but({ channels: [channel('firebox', 664, 40), channel('wall', 168, -13)] }), noon)).toBe('unknown')
    expect(leakOf(but({ channels: [channel('firebox', 21, 3), channel('wall', 30, -1)] }), noon + 9 * hour)).toBe('no-sign')
  })

  test('what burnt in the closed kiln had air', () => {
    expect(leakOf(but({ hints: [{ hint: 'open-untold', by: noon, because: [{ code: 'fire-came-back' }] }] }), noon)).toBe('sign')
  })

  test('a leak that is told stands first', () => {
    const alarm = { alarm: 'air-leak', state: 'unacknowledged', priority: 'warning', since: noon, firstOut: true } as const
    expect(leakOf(but({ alarms: [{ ...alarm, because: [], shelvedUntil: null }], channels: [] }), noon)).toBe('sign')
  })
})
