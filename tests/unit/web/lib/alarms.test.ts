import { expect, test } from 'vitest'
import type { AlarmView } from '../../../../server/contract/live.ts'
import { soundOf, standing } from '../../../../web/src/lib/alarms/standing.ts'

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
