import { describe, expect, test } from 'vitest'
import type { Action } from '../../../../server/contract/actions.ts'
import type { KilnView } from '../../../../server/contract/live.ts'
import { answerOf } from '../../../../web/src/lib/acts/keys.ts'
import { faceOf } from '../../../../web/src/lib/words/face.ts'
import { Measures } from '../../../../web/src/lib/words/measures.ts'
import { freshReasons, sentenceOf, sentencesOf } from '../../../../web/src/lib/words/sentence.ts'
import { sinceMs, spanText } from '../../../../web/src/lib/words/spans.ts'
import { en } from '../../../../web/src/words/en.ts'
import { channel, kiln, minute, noon } from '../../../browser/fake/kiln.ts'
import { scenes } from '../../../browser/fake/scenes.ts'

const measures = new Measures({ language: 'en', temperature: 'C', volume: 'L', mass: 'kg' })
const did = (act: Action, ago = 1) => ({ id: `${act.action}-${ago}`, at: noon - ago * minute, doneAt: noon - ago * minute, act })
const nameOf = (view: KilnView) => faceOf(view, en)?.name

describe('each phase has a face of its own', () => {
  test('from loading to unloading', () => {
    const { morning } = scenes
    const after = (...acts: ReturnType<typeof did>[]): KilnView => ({ ...morning, firing: { ...morning.firing, acts } })
    expect(nameOf(scenes['before-lighting'])).toBe('load')
    expect(nameOf({ ...scenes['before-lighting'], command: { ...scenes['before-lighting'].command, do: 'light' } })).toBe('light')
    expect(nameOf(kiln({ firing: { phase: 'kindling' } }))).toBe('kindling')
    expect(nameOf(scenes.waiting)).toBe('drying')
    expect(nameOf(scenes['start-due'])).toBe('start-collecting')
    expect(nameOf(scenes.collecting)).toBe('collect')
    expect(nameOf(scenes['drip-turning'])).toBe('stop-collecting')
    expect(nameOf(kiln({ firing: { phase: 'tar', acts: [did({ action: 'stop-collecting' })] } }))).toBe('tar')
    expect(nameOf(scenes.sealing)).toBe('seal')
    expect(nameOf(scenes.night)).toBe('keep-shut')
    expect(nameOf(morning)).toBe('trial-opening')
    expect(nameOf(after(did({ action: 'crack' }, 5)))).toBe('gap')
    expect(nameOf(after(did({ action: 'crack' }, 5), did({ action: 'reseal' }, 2)))).toBe('trial-opening')
    expect(nameOf(after(did({ action: 'crack' }, 45), did({ action: 'open' }, 5)))).toBe('unload')
  })

  test('an open drum is unloaded, not loaded; an empty one is loaded', () => {
    const { morning } = scenes
    const nothing = (view: KilnView): KilnView => ({ ...view, command: { ...view.command, do: 'none' } })
    expect(sentenceOf(nothing(morning), noon, en, measures)).toMatchObject({ command: 'Unload it.' })
    expect(sentenceOf(scenes['before-lighting'], noon, en, measures)).toMatchObject({ command: 'Ready.' })
  })

  // a probe that slowly loses touch reads like a kiln that cools: it is pressed on before anybody makes a gap
  test('where the call rests on the wall probe alone, pressing it on is the first step', () => {
    const { morning } = scenes
    const alone: KilnView = { ...morning, command: { ...morning.command, doubts: [{ code: 'one-wall-probe' }] } }
    expect(faceOf(alone, en)?.steps.map(({ text }) => text)).toEqual([en.crack.pressShort, ...en.faces['trial-opening']])
    expect(faceOf(morning, en)?.steps.map(({ text }) => text)).toEqual(en.faces['trial-opening'])
  })

  test('the list and the sound are ticked off', () => {
    const before = scenes['before-lighting']
    const acts = [did({ action: 'note', text: en.ready.logged })]
    const view: KilnView = { ...before, command: { ...before.command, do: 'light' }, firing: { ...before.firing, acts } }
    expect(faceOf(view, en)?.steps.map(({ done }) => done)).toEqual([true, false, false])
  })
})

test('a hot firebox before lighting is asked about, with one touch to log it; nobody is told to load a cold drum', () => {
  const before = scenes['before-lighting']
  const hot = (value: number, more = {}): KilnView => ({ ...before, channels: [channel('firebox', value, null, more)] })
  for (const command of ['none', 'light'] as const) {
    const view = { ...hot(410), command: { ...before.command, do: command } }
    expect(sentenceOf(view, noon, en, measures).command).toBe('Is it lit already?')
    expect(faceOf(view, en)).toBeNull()
    expect(answerOf(view)).toBe('light')
  }
  expect(sentenceOf(hot(60), noon, en, measures).command).toBe('Ready.')
  expect(sentenceOf(hot(410, { quality: 'suspect' }), noon, en, measures).command).toBe('Ready.')
})

describe('a dark drip while it is only kindling', () => {
  const seen = (drip: 'dark' | 'pale', ago: number) =>
    sentenceOf(kiln({ firing: { phase: 'kindling', acts: [did({ action: 'observe', drip }, ago)] } }), noon, en, measures).why

  test('is answered: old tar of the pipe, into the tar vessel', () => {
    expect(seen('dark', 5)).toContain('old tar from the pipe: into the tar vessel')
    expect(seen('pale', 5)).not.toContain('old tar')
    expect(seen('dark', 50)).not.toContain('old tar')
  })
})

test('an alarm tells the newest number; once it has come back that is told, and no more what was lost before', () => {
  const because = [
    { code: 'outlet-over', value: 71, limit: 55, channel: 'yard/n1/outlet' },
    { code: 'litres-lost-least', value: 1.2 },
    { code: 'litres-lost-most', value: 2.4 },
  ]
  const told = (outlet: number) =>
    sentencesOf(freshReasons(because, kiln({ channels: [channel('outlet', outlet)] })), en, measures).replaceAll('\u00a0', ' ')
  expect(told(74)).toMatch(/^Outlet 74 °C, over 55 °C\..*2\.4/)
  expect(told(48)).toBe('Now at 48 °C, on its way back.')
})

test('carbon monoxide is never told as on its way back: a low number clears nothing', () => {
  const because = [{ code: 'co-over', value: 300, limit: 200 }]
  expect(freshReasons(because, kiln({ channels: [channel('co', 20)] }))).toEqual(because)
})

test('a node that is heard again beside its alarm is not called silent, one that is not heard is', () => {
  const because = [{ code: 'node-silent', value: 3 }]
  const codes = (view: KilnView, of: string) => freshReasons(because, view, of).map(({ code }) => code)
  expect(codes(kiln({ channels: [channel('firebox', 610)] }), 'yard/n1')).toEqual(['heard-again'])
  expect(codes(kiln({ channels: [channel('firebox', 610)] }), 'yard/n2')).toEqual(['node-silent'])
  expect(codes(kiln({ channels: [channel('firebox', null, null, { heard: 'lost' })] }), 'yard/n1')).toEqual(['node-silent'])
})

test('a bottle that was taken away at kindling does not make tar of the steam', () => {
  const view = kiln({ firing: { phase: 'kindling', acts: [did({ action: 'stop-collecting' })] }, channels: [] })
  expect(faceOf(view, en)?.steps.map(({ text }) => text)).toContain('Bottle stays away: it is water')
  expect(sentenceOf(view, noon, en, measures).why).not.toContain('tar')
})

describe('how long it has been sealed is told in one form, the same in the corner and in the sentence', () => {
  test.each([
    [9, 'Sealed for 9 min;'],
    [60, 'Sealed for 1 h 0 min;'],
    [414, 'Sealed for 6 h 54 min;'],
  ])('%d min', (min, text) => {
    // lit and sealed between two strokes of the clock; the service judged it some minutes ago
    const sealedAt = noon - min * minute + 40_000
    const { night } = scenes
    const because = [{ code: 'sealed-for', value: (min - 3) / 60, limit: 10 }]
    const view = { ...night, firing: { ...night.firing, sealedAt }, command: { ...night.command, because } }
    expect(sentenceOf(view, noon, en, measures).why).toContain(text)
    expect(text).toContain(spanText(sinceMs(sealedAt, noon + 50_000), en))
  })
})
