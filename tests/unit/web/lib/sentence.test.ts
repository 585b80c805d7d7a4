import { expect, test } from 'vitest'
import { kiln, minute, hour, noon, channel } from '../../../browser/fake/kiln.ts'
import { scenes } from '../../../browser/fake/scenes.ts'
import { doubtText } from '../../../../web/src/lib/words/doubt.ts'
import { Measures } from '../../../../web/src/lib/words/measures.ts'
import { decidingRole, sentenceOf, trendText } from '../../../../web/src/lib/words/sentence.ts'
import { en } from '../../../../web/src/words/en.ts'

const measures = new Measures({ language: 'en', temperature: 'C', volume: 'L', mass: 'kg' })
const told = (view: ReturnType<typeof kiln>) => sentenceOf(view, noon, en, measures)

test('waiting: what, until when as a range, why', () => {
  const sentence = told(kiln())
  expect(sentence.command).toBe('Wait.')
  expect(sentence.until).toMatch(/^Start collecting likely between \d\d:\d\d and \d\d:\d\d\.$/)
  expect(sentence.why).toBe('Smoke 69 °C, climbing 22 °C an hour. The wood is drying: what drips now is water.')
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

test('an empty drum is never told as loaded', () => {
  const view = kiln({
    command: { do: 'none', because: [] },
    firing: { phase: 'idle', charge: { massKg: 61.5, moisturePct: 15, pieceMm: 100 } },
  })
  expect(told(view)).toMatchObject({ until: 'Load the drum, go through the list, then light it.', why: en.caution.co })
})

test('a sealed kiln whose probes can not settle it promises no call to wait for', () => {
  const because = [{ code: 'wall-tells-no-more', value: 6 }, { code: 'own-signs-only' }]
  const view = kiln({ command: { do: 'keep-shut', notBefore: null, because }, hints: [{ hint: 'open-untold', by: noon, because }] })
  expect(told(view).until).toBe('These probes can not tell when. Do not wait for a call.')
  expect(told(view).why).toContain('as cool as the air for 6 h and tells nothing more of the inside. Time alone is no proof')
})

test('a kiln in which a fire came back is to be closed anew and logged before any call is promised', () => {
  const because = [{ code: 'fire-came-back' }]
  const view = kiln({ command: { do: 'keep-shut', notBefore: null, because }, hints: [{ hint: 'open-untold', by: noon, because }] })
  expect(told(view).until).toBe('Close it anew with clay and log it.')
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
  expect(trendText(channel('wall', 200, -13, { slopeSd: 0.8 }), en, measures)).toBe('Drum wall 200 °C, falling 13 °C an hour.')
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

test('a reason never tells another number than the probe beside it shows', () => {
  // the call came at 83; ten minutes later the probe reads 88
  const view = kiln({
    firing: { phase: 'vinegar' },
    channels: [channel('smoke', 88, 24)],
    command: {
      do: 'start-collecting',
      next: null,
      because: [{ code: 'smoke-over', value: 83, limit: 80, forS: 600 }, { code: 'seen-smoke-yellow' }],
    },
  })
  expect(told(view).why).toBe('Smoke 88 °C, climbing 24 °C an hour. The smoke looks yellow.')
})

test('what is to be done at once is not pushed aside by the next forecast', () => {
  const view = kiln({
    command: { do: 'stop-collecting', next: { call: 'seal', range: { earliest: noon, likely: noon + hour, latest: noon + 2 * hour } } },
  })
  expect(told(view).until).toBe('Take the bottle away now. Tar is coming.')
})

test('the litres that the sentence tells were measured: what is estimated anew makes them no fewer', () => {
  const view = structuredClone(scenes.collecting)
  expect(told(view).why).toContain('4.6 L caught in the bottles before.')
  view.estimate = { ...view.estimate!, condensateKg: 2 }
  expect(told(view).why).toContain('4.6 L caught in the bottles before.')
  view.firing.acts = []
  expect(told(view).why).not.toContain('caught')
})

test('a slope that is known too badly is not called steady', () => {
  expect(trendText(channel('wall', 37, -6, { slopeSd: 4 }), en, measures, 3)).toBe('Drum wall 37 °C.')
})

test('a rate is told no finer than it is known', () => {
  expect(trendText(channel('wall', 200, -13, { slopeSd: 2 }), en, measures)).toBe('Drum wall 200 °C, falling 15 °C an hour.')
  expect(trendText(channel('wall', 200, 24, { slopeSd: 6 }), en, measures)).toBe('Drum wall 200 °C, climbing 20 °C an hour.')
})

test('a small gap is watched for thirty minutes', () => {
  const view = structuredClone(scenes.morning)
  view.firing.acts.push({ id: 'c', at: noon, doneAt: noon - 5 * minute, act: { action: 'crack' } })
  expect(told(view).until).toBe('Watch the small gap until 08:56. Glow, smoke or a rise: close it.')
  view.firing.acts.push({ id: 'r', at: noon, doneAt: noon - 2 * minute, act: { action: 'reseal' } })
  expect(told(view).until).toBe('Stand aside, clay ready, watch for 30 minutes.')
})

test('under the why: how sure, what can not be judged, what would change the call', () => {
  const command = {
    unless: [{ code: 'seen-smoke-yellow' }, { code: 'seen-drip-pale' }],
    doubts: [{ code: 'no-wall' }],
    sure: 'middle' as const,
  }
  expect(doubtText(kiln({ command, channels: [channel('firebox', 724)] }), en, measures)).toBe(
    'Fairly sure. Nothing is heard of the drum wall. Sooner, if: the smoke looks yellow; the drip looks pale.',
  )
  expect(doubtText(scenes['before-lighting'], en, measures)).toBe('')
  // of a sealed kiln nobody says that it is sure
  expect(doubtText(scenes.night, en, measures)).toBe('')
})

test('what was asked for and is over is told no more: the wait of a sealed kiln, the reason of a phase long ago', () => {
  const because = [
    { code: 'sealed-for', value: 9.9, limit: 10 },
    { code: 'hottest-below', value: 132, limit: 45 },
  ]
  const at = (hours: number) =>
    told(kiln({ command: { do: 'keep-shut', because }, firing: { phase: 'cooling', sealedAt: noon - hours * hour } })).why
  expect(at(9)).toContain('at least 10 h are needed')
  expect(at(10.1)).not.toContain('are needed')
  expect(at(10.1)).toContain('The hottest part may be 132 °C')
  const drying = kiln({ command: { do: 'wait', because: [{ code: 'outlet-over', value: 51, limit: 45, forS: 300 }] } })
  expect(told(drying).why).toContain(en.waits.drying)
})

test('the share that is told is the one of now, and a bound is never told as its own limit', () => {
  const scene = scenes['drip-turning']
  const because = [{ code: 'tar-share', value: 0.2, limit: 0.14 }]
  const estimate = scene.estimate && { ...scene.estimate, from: 'ensemble' as const, tarShare: 0.37 }
  const later = { ...scene, estimate, command: { ...scene.command, do: 'stop-collecting' as const, because } }
  expect(told(later).why).toContain('37 % of the drip is tar')
  const bound = (value: number) => {
    const command = { do: 'trial-opening' as const, because: [{ code: 'hottest-below', value, limit: 45 }] }
    return told(kiln({ command, firing: { phase: 'cold', sealedAt: noon - 20 * hour } })).why
  }
  expect(bound(44.7)).toContain('may be 44 °C; it must be below 45 °C')
  expect(bound(45.2)).toContain('may be 46 °C; it must be below 45 °C')
})

test('of the glasses the newest is told, not the one that made the call', () => {
  const seen = (id: string, drip: 'pale' | 'amber', at: number) => ({ id, at, doneAt: at, act: { action: 'observe' as const, drip } })
  const acts = [seen('a', 'pale', noon - 2 * hour), seen('b', 'amber', noon - 10 * minute)]
  const view = kiln({ command: { do: 'start-collecting', because: [{ code: 'seen-drip-pale' }] }, firing: { phase: 'vinegar', acts } })
  expect(told(view).why).toContain('The drip looks amber')
  expect(told(view).why).not.toContain('pale')
})
