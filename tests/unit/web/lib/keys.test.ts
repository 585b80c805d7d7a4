import { describe, expect, test } from 'vitest'
import { actText } from '../../../../web/src/lib/acts/act-text.ts'
import { Measures } from '../../../../web/src/lib/words/measures.ts'
import { en } from '../../../../web/src/words/en.ts'
import { es } from '../../../../web/src/words/es.ts'
import { answerOf, directActs, keysFor, soundIsProven } from '../../../../web/src/lib/acts/keys.ts'
import { kiln, noon, minute } from '../../../browser/fake/kiln.ts'
import { scenes } from '../../../browser/fake/scenes.ts'

describe('six keys', () => {
  const running = ['waiting', 'collecting', 'cloths-dry', 'drip-turning', 'sealing'] as const

  test.each(running)('%s: fire first, cloths second, drip fourth, smoke fifth', (name) => {
    const six = keysFor(scenes[name], 'day')
    expect([six[0], six[1], six[3], six[4]]).toEqual(['refuel', 'wet-condenser', 'drip', 'smoke'])
  })

  test('what can not be undone never happens at one touch', () => {
    for (const act of Object.values(directActs)) expect(['seal', 'crack', 'open', 'unload']).not.toContain(act.action)
  })

  test('no key stands twice', () => {
    for (const view of Object.values(scenes)) expect(new Set(keysFor(view, 'day')).size).toBe(6)
  })

  test('after stop-feeding nobody is asked to feed', () => {
    const view = kiln({ firing: { acts: [{ id: 's', at: noon, doneAt: noon, act: { action: 'stop-feeding' } }] } })
    expect(keysFor(view, 'day')).not.toContain('refuel')
  })

  test('a stop of collecting that was taken back leaves the key for collecting', () => {
    const acts = [
      { id: 's', at: noon - minute, doneAt: noon - minute, act: { action: 'stop-collecting' } as const },
      { id: 't', at: noon, doneAt: noon, act: { action: 'note', text: '' } as const, corrects: 's' },
    ]
    expect(keysFor(kiln({ firing: { acts } }), 'day')[5]).toBe('start-collecting')
  })

  test('an opened gap offers to close it or to leave it open', () => {
    const acts = [{ id: 'c', at: noon, doneAt: noon, act: { action: 'crack' } as const }]
    const six = keysFor(kiln({ ...scenes.morning, firing: { ...scenes.morning.firing, acts } }), 'day')
    expect(six.slice(0, 2)).toEqual(['open', 'reseal'])
  })
})

test('the key that answers the alarm, or else the call', () => {
  expect(answerOf(scenes['cloths-dry'])).toBe('wet-condenser')
  expect(answerOf(scenes['drip-turning'])).toBe('stop-collecting')
  expect(answerOf(scenes.sealing)).toBe('seal')
  expect(answerOf(scenes.waiting)).toBeNull()
})

test('the sound is proven at the start, and again once it is sealed', () => {
  const heardAt = (armedAt: number) => answerOf({ ...scenes.night, firing: { ...scenes.night.firing, armedAt } })
  const sealedAt = scenes.night.firing.sealedAt ?? 0
  expect(heardAt(sealedAt - minute)).toBe('soundTest')
  expect(heardAt(sealedAt + minute)).toBeNull()
})

test('a sound that was sent and never answered, or not heard, is not proven', () => {
  const idle = scenes['before-lighting']
  const test = (minutes: number, answers: { tablet?: boolean; buzzer?: boolean }) => ({
    id: `arm-${minutes}`,
    at: noon,
    doneAt: noon + minutes * minute,
    act: { action: 'arm' as const, ...answers },
  })
  const proven = (...acts: ReturnType<typeof test>[]) => soundIsProven({ ...idle, firing: { ...idle.firing, armedAt: noon, acts } })
  expect(proven(test(0, {}))).toBe(false)
  expect(proven(test(0, {}), test(1, { tablet: true }))).toBe(true)
  expect(proven(test(0, {}), test(1, { tablet: false, buzzer: false }))).toBe(false)
  expect(proven(test(0, { tablet: true }), test(1, { tablet: false, buzzer: false }))).toBe(false)
})

test('the list is gone through, whatever the language of the tablet on which', () => {
  const before = scenes['before-lighting']
  const note = { id: 'n', at: noon, doneAt: noon, act: { action: 'note', text: es.ready.logged } as const }
  const listed = { ...before, command: { ...before.command, do: 'light' as const }, firing: { ...before.firing, acts: [note] } }
  expect(answerOf(listed)).toBe('soundTest')
  expect(actText(note.act, en, new Measures({ language: 'en', temperature: 'C', volume: 'L', mass: 'kg' }))).toContain(en.ready.logged)
})

test('after a fire that came back clay is the answer', () => {
  const because = [{ code: 'fire-came-back' }]
  expect(answerOf({ ...scenes.night, hints: [{ hint: 'open-untold', by: noon, because }] })).toBe('reseal')
})

test('before lighting the keys turn black in the order of the work: load, list, sound, fire', () => {
  const before = scenes['before-lighting']
  const loaded = { ...before, command: { ...before.command, do: 'light' as const } }
  const list = { id: 'n', at: noon, doneAt: noon, act: { action: 'note', text: en.ready.logged } as const }
  const listed = { ...loaded, firing: { ...loaded.firing, acts: [list] } }
  const back = { id: 'b', at: noon, doneAt: noon, act: { action: 'note', text: '' } as const, corrects: 'n' }
  expect(answerOf(before)).toBe('load')
  expect(answerOf(loaded)).toBe('ready')
  expect(answerOf(listed)).toBe('soundTest')
  expect(answerOf({ ...listed, firing: { ...listed.firing, armedAt: noon } })).toBe('light')
  expect(answerOf({ ...listed, firing: { ...listed.firing, acts: [list, back] } })).toBe('ready')
})
