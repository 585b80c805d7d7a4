import { expect, test } from 'vitest'
import type { AlarmView } from '../../../../server/contract/live.ts'
import { isQuiet, soundOf, standing } from '../../../../web/src/lib/alarms/standing.ts'
import { patterns, type Pattern } from '../../../../web/src/lib/sound/patterns.ts'
import { en } from '../../../../web/src/words/en.ts'
import { es } from '../../../../web/src/words/es.ts'
import { th } from '../../../../web/src/words/th.ts'
import { scenes } from '../../../browser/fake/scenes.ts'

const alarm = (name: AlarmView['alarm'], state: AlarmView['state'], priority: AlarmView['priority'], firstOut = false): AlarmView => ({
  alarm: name,
  state,
  priority,
  since: 0,
  firstOut,
  because: [],
  shelvedUntil: null,
})

test('shelved, suppressed, out of service and normal ones are not shown', () => {
  const hidden = (['normal', 'shelved', 'suppressed', 'out-of-service'] as const).map((state) => alarm('fire-dying', state, 'urgent'))
  expect(standing(hidden)).toEqual([])
})

test('what nobody has hushed comes before what is hushed, even if that is worse', () => {
  const list = [alarm('reignition', 'acknowledged', 'urgent'), alarm('condenser-hot', 'unacknowledged', 'warning')]
  expect(standing(list).map((one) => one.alarm)).toEqual(['condenser-hot', 'reignition'])
})

test('of two alike the one that came first', () => {
  const list = [alarm('fire-dying', 'unacknowledged', 'warning'), alarm('condenser-hot', 'unacknowledged', 'warning', true)]
  expect(standing(list)[0]?.alarm).toBe('condenser-hot')
})

test('hushed or over by itself it sounds no more', () => {
  expect(soundOf([alarm('reignition', 'acknowledged', 'urgent')])).toBeNull()
  expect(soundOf([alarm('reignition', 'returned-unacknowledged', 'urgent')])).toBeNull()
  expect(soundOf([alarm('reignition', 'latched-unacknowledged', 'urgent')])).toBe('urgent')
})

test('it is quiet only while neither an alarm nor a call stands', () => {
  expect(isQuiet(scenes.waiting)).toBe(true)
  expect(isQuiet(scenes['drip-turning'])).toBe(false)
  expect(isQuiet(scenes['cloths-dry'])).toBe(false)
  for (const words of [en, es, th]) expect(words.quiet.soundOff).not.toMatch(/silen|quiet|callad|ไม่มีเสียง/i)
})

// Handbook field-ui 4.6: 800 to 2500 Hz carries beside a fire; what each says is heard from its rhythm.
test('every sound carries, no two have one rhythm, and the more urgent comes back sooner', () => {
  const all: Pattern[] = Object.values(patterns)
  for (const { tones } of all) for (const { hz } of tones) expect([hz >= 800, hz <= 2500]).toEqual([true, true])
  const rhythms = all.map(({ tones }) => JSON.stringify(tones.map(({ at, forS }) => [at, forS])))
  expect(new Set(rhythms).size).toBe(all.length)
  for (const { tones, everyS } of all) expect(tones.at(-1)!.at + tones.at(-1)!.forS).toBeLessThan(everyS ?? Infinity)
  expect(patterns.urgent.everyS).toBeLessThan(patterns.warning.everyS)
  expect(patterns.notice.everyS).toBeNull()
})
