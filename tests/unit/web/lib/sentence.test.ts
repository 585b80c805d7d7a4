import { expect, test } from 'vitest'
import { kiln, minute, hour, noon, channel } from '../../../browser/fake/kiln.ts'
import { scenes } from '../../../browser/fake/scenes.ts'
import { Measures } from '../../../../web/src/lib/words/measures.ts'
import { decidingRole, sentenceOf, trendText } from '../../../../web/src/lib/words/sentence.ts'
import { en } from '../../../../web/src/words/en.ts'

const measures = new Measures({ language: 'en', temperature: 'C', volume: 'L', mass: 'kg', look: 'day', voice: true })
const told = (view: ReturnType<typeof kiln>) => sentenceOf(view, noon, en, measures)

test('waiting: what, until when as a range, why', () => {
  const sentence = told(kiln())
  expect(sentence.command).toBe('Wait.')
  expect(sentence.until).toMatch(/^Start collecting likely between \d\d:\d\d and \d\d:\d\d\.$/)
  expect(sentence.why).toBe('Smoke 69 °C, climbing 22 °C an hour.')
})

test('opening never gets an hour, only one before which not, and that one errs late', () => {
  const at = noon + 15 * hour + 2 * minute
  const view = kiln({
    command: { do: 'keep-shut', notBefore: at, next: { call: 'open', range: { earliest: at, likely: at + hour, latest: at + 2 * hour } } },
  })
  expect(told(view).until).toMatch(/^Not before \d\d:(00|30) tomorrow\. I will call\.$/)
  const late = kiln({
    command: { do: 'keep-shut', notBefore: null, next: { call: 'open', range: { earliest: at, likely: at, latest: at } } },
  })
  expect(told(late).until).toBe('I will call.')
})

test('a forecast that has passed is not told any more', () => {
  const view = kiln({ command: { next: { call: 'seal', range: { earliest: noon - hour, likely: noon - minute, latest: noon - 1 } } } })
  expect(told(view).until).toBe('No forecast yet.')
})

test('the number that the call hangs on', () => {
  expect(decidingRole(scenes.waiting)).toBe('smoke')
  expect(decidingRole(scenes['three-probes'])).toBe('smoke')
  expect(decidingRole(kiln({ channels: [channel('wall', 100)], estimate: null }))).toBe('wall')
  expect(decidingRole(scenes.night)).toBe('wall')
  expect(decidingRole(scenes.morning)).toBe('core')
})

test('a slope within its own error is steady', () => {
  expect(trendText(channel('wall', 200, 3, { slopeSd: 2 }), en, measures)).toBe('Drum wall 200 °C, steady.')
  expect(trendText(channel('wall', 200, -13, { slopeSd: 2 }), en, measures)).toBe('Drum wall 200 °C, falling 13 °C an hour.')
})

test('an unknown reason code is shown, never a crash', () => {
  expect(told(kiln({ command: { because: [{ code: 'moon-is-full' }] } })).why).toContain('Moon is full.')
})

test('a range of losses is one sentence', () => {
  const because = [
    { code: 'litres-lost-least', value: 0.5 },
    { code: 'litres-lost-most', value: 1.4 },
  ]
  expect(told(kiln({ command: { because } })).why).toContain('0.5 to 1.4 L an hour are lost.')
})
