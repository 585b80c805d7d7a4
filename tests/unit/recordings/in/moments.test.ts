import { expect, test } from 'vitest'
import type { TimeWay } from '../../../../server/contract/imports.ts'
import { momentOf, timeWayOf, valueOf } from '../../../../server/recordings/in/moments.ts'

const at = (text: string, time: TimeWay, offsetMin = 0) => {
  const moment = momentOf(text, { time, offsetMin, decimal: '.' }, Date.UTC(2026, 2, 1, 7))
  return moment === null ? null : new Date(moment).toISOString()
}

test.each<[string, TimeWay, string | null]>([
  // RFC 3339, 5.8: its own examples
  ['1985-04-12T23:20:50.52Z', 'iso', '1985-04-12T23:20:50.520Z'],
  ['1996-12-19T16:39:57-08:00', 'iso', '1996-12-20T00:39:57.000Z'],
  ['1937-01-01T12:00:27.87+00:20', 'iso', '1937-01-01T11:40:27.870Z'],
  ['2026-03-01 07:30', 'iso', '2026-03-01T07:30:00.000Z'],
  ['2026-02-29 07:30', 'iso', null],
  ['2026-03-01 24:30', 'iso', null],
  ['01/03/2026 07:30:05', 'day-first', '2026-03-01T07:30:05.000Z'],
  ['3/1/2026 7:30', 'month-first', '2026-03-01T07:30:00.000Z'],
  ['31/12/2026 07:30', 'month-first', null],
  ['1772350200', 'seconds-1970', '2026-03-01T07:30:00.000Z'],
  // milliseconds since 1970 in the place of seconds: a year of five digits
  ['1772350200000', 'seconds-1970', null],
  ['9999-12-31T23:59-01:00', 'iso', null],
  ['0000-01-01T00:00+01:00', 'iso', null],
  ['0026-03-01T07:30Z', 'iso', null],
  ['30.5', 'minutes', '2026-03-01T07:30:30.000Z'],
  ['-1', 'minutes', null],
  ['soon', 'iso', null],
])('%s as %s', (text, time, moment) => {
  expect(at(text, time)).toBe(moment)
})

test('a time without a zone is a time of the place, one with a zone is not moved', () => {
  expect(at('2026-03-01 14:30', 'iso', 420)).toBe('2026-03-01T07:30:00.000Z')
  expect(at('2026-03-01T07:30Z', 'iso', 420)).toBe('2026-03-01T07:30:00.000Z')
})

test('the way of writing times is found', () => {
  expect(timeWayOf(['2026-03-01 07:30'], '.')).toBe('iso')
  expect(timeWayOf(['01/03/2026 07:30', '13/03/2026 07:30'], '.')).toBe('day-first')
  expect(timeWayOf(['03/01/2026 07:30', '03/13/2026 07:30'], '.')).toBe('month-first')
  expect(timeWayOf(['1772350200'], '.')).toBe('seconds-1970')
  expect(timeWayOf(['0', '0.5'], '.')).toBe('minutes')
})

test.each([
  ['12,5', ',', 12.5],
  ['12.5', ',', null],
  ['12.5', '.', 12.5],
  ['1.250,5', ',', null],
  ['−3', '.', -3],
  ['12 C', '.', null],
  ['', '.', null],
  ['NaN', '.', null],
] as const)('%j with decimal %j', (text, decimal, value) => {
  expect(valueOf(text, decimal)).toBe(value)
})
