import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { asWritten, harmless, rowsIn, rowText, type ImportRefusal } from '../../../../server/recordings/csv/rows.ts'

const naughty = JSON.parse(readFileSync('tests/corpora/naughty-strings/blns.json', 'utf8')) as string[]
const readRows = (text: string, separator: string) => [...rowsIn(text, separator)]
const cellsOf = (text: string, separator = ',') => readRows(text, separator).map(({ cells }) => cells)

// RFC 4180, section 2, the seven points with their own examples
test.each([
  [
    '2.1 each record on a line',
    'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '2.2 the last may lack its line end',
    'aaa,bbb,ccc\r\nzzz,yyy,xxx',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '2.3 a header line',
    'field_name,field_name,field_name\r\naaa,bbb,ccc\r\n',
    [
      ['field_name', 'field_name', 'field_name'],
      ['aaa', 'bbb', 'ccc'],
    ],
  ],
  ['2.4 spaces belong to the field', 'aaa, bbb ,ccc', [['aaa', ' bbb ', 'ccc']]],
  [
    '2.5 fields in quotes or not',
    '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
    [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  [
    '2.6 line ends in quotes',
    '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
    [
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ],
  ],
  ['2.7 a quote is doubled', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
])('RFC 4180 %s', (_, text, rows) => {
  expect(cellsOf(text)).toEqual(rows)
})

test('a record of RFC 4180 is written as it is there', () => {
  expect(rowText(['aaa', 'b"bb', 'ccc'], ',')).toBe('aaa,"b""bb",ccc\r\n')
  expect(rowText(['aaa', 'b\r\nbb', 'ccc'], ',')).toBe('aaa,"b\r\nbb",ccc\r\n')
})

test.each([
  ['a quote in a bare field', 'a,b\r\n1,2"3\r\n', 2, 'stray-quote'],
  ['something after the closing quote', 'a,b\r\n"x\r\ny",1\r\n"z"z,1\r\n', 4, 'stray-quote'],
  ['a quote that is never closed', 'a,b\r\n1,2\r\n1,"2\r\n', 3, 'open-quote'],
])('%s is named with its line', (_, text, line, code) => {
  try {
    readRows(text, ',')
    expect.unreachable()
  } catch (problem) {
    expect((problem as ImportRefusal).problem).toMatchObject({ line, code })
  }
})

test.each([',', ';', '\t'])('naughty strings come back through %j as they were', (separator) => {
  for (const words of naughty) {
    const text = rowText(['x', harmless(words), 'y'], separator)
    expect(readRows(text, separator).map(({ cells }) => cells.map(asWritten))).toEqual([['x', words, 'y']])
  }
})

test('no cell of words is a formula', () => {
  // OWASP, CSV injection: a cell that starts with = + - @, a tab or a carriage return is evaluated
  for (const words of [...naughty, '=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', "'=1"]) {
    const [cell = ''] = cellsOf(rowText([harmless(words)], ','))[0] ?? ['']
    expect(cell).not.toMatch(/^[=+\-@\t\r]/)
  }
})
