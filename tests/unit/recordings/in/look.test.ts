import { gzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import type { CsvMatch } from '../../../../server/contract/imports.ts'
import { lookAt } from '../../../../server/recordings/in/look.ts'
import { createMemoryStore } from '../../../../server/storage/memory.ts'

const look = async (text: string | Uint8Array, match: CsvMatch | null = null) =>
  (await lookAt(createMemoryStore(), Buffer.from(text), 'kiln log.csv', match)).preview
const good = 'Time;Drum wall C;Smoke;Note\n2026-03-01 14:30;21,5;30;lit, at last\n2026-03-01 14:31;;31;\n'

test('a log of a spreadsheet is understood at first sight', async () => {
  const preview = await look(good)
  expect(preview).toMatchObject({ kind: 'csv', known: false, title: 'kiln log', problems: [], readings: 2, acts: 1 })
  expect(preview.csv?.match).toEqual({
    separator: ';',
    decimal: ',',
    time: 'iso',
    offsetMin: 0,
    startAt: null,
    unit: 'C',
    columns: ['time', 'wall', 'smoke', 'note'],
  })
  expect(preview.csv?.sample[1]).toEqual(['2026-03-01 14:31', '', '31', ''])
  expect([preview.from, preview.to]).toEqual([Date.UTC(2026, 2, 1, 14, 30), Date.UTC(2026, 2, 1, 14, 31)])
})

test.each([
  ['a word for a number', good.replace(';31;', ';hot;'), 'bad-number', 3, 'hot'],
  ['a time that is none', good.replace('2026-03-01 14:31', 'later'), 'bad-time', 3, 'later'],
  ['a step back in time', good.replace('14:31', '14:29'), 'time-goes-back', 3, '2026-03-01 14:29'],
  ['a row that no firing reaches', good.replace('2026-03-01 14:31', '2026-05-03 14:31'), 'too-long', 3, '2026-05-03 14:31'],
  ['a row too short', good.replace('14:31;;31;', '14:31;31'), 'cells-differ', 3, '2 / 4'],
  ['a header alone', 'Time;Drum wall\n', 'no-rows', null, ''],
  ['nothing', '', 'empty', null, ''],
  ['no times', good.replace('Time', 'x'), 'no-time-column', null, ''],
  ['bytes that are no text', Buffer.from([0x41, 0xff, 0xfe]), 'not-text', null, ''],
  ['a cut gzip', gzipSync(good).subarray(0, 30), 'damaged', null, ''],
])('%s is told with its line', async (_, text, code, line, found) => {
  const preview = await look(text)
  expect(preview.problems).toEqual([{ code, line, found }])
  expect([preview.readings, preview.from]).toEqual([0, null])
})

test('a bad line of a recording is named', async () => {
  const preview = await look('{"recording":1}\n{"at":"2026-03-01T07:30:00Z","action":"light"}\n{"at":"soon","action":"light"}\n')
  expect(preview.problems).toMatchObject([{ code: 'bad-line', line: 3 }])
})

test('times without a date count from a start that must be given', async () => {
  const text = 'minutes,wall\n0,20\n1.5,21\n'
  expect((await look(text)).problems).toMatchObject([{ code: 'bad-start' }])
  const guess = (await look(text)).csv?.match
  if (!guess) throw new Error('no match')
  const preview = await look(text, { ...guess, startAt: '2026-03-01T07:00:00Z' })
  expect(preview).toMatchObject({ problems: [], from: Date.UTC(2026, 2, 1, 7), to: Date.UTC(2026, 2, 1, 7, 1, 30) })
})

test('the same column twice, and none at all', async () => {
  const text = 'time,a\n2026-03-01 07:00,1\n'
  const guess = (await look(text)).csv?.match
  if (!guess) throw new Error('no match')
  expect((await look(text, { ...guess, columns: ['time', 'time'] })).problems).toMatchObject([{ code: 'role-twice', found: 'time' }])
  expect((await look(text, { ...guess, columns: ['time', 'skip'] })).problems).toMatchObject([{ code: 'no-value-column' }])
})
