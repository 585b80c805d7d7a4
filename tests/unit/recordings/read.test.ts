import { gzipSync } from 'node:zlib'
import { describe, expect, test } from 'vitest'
import type { KilnConfig } from '../../../server/contract/fold.ts'
import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import { readRecording, RecordingProblem } from '../../../server/recordings/read.ts'

const text = (...rows: (object | string)[]) =>
  new TextEncoder().encode(rows.map((r) => (typeof r === 'string' ? r : JSON.stringify(r))).join('\n'))
const problemOf = (file: Uint8Array): RecordingProblem => {
  try {
    readRecording(file)
  } catch (problem) {
    return problem as RecordingProblem
  }
  throw new Error('was read')
}
const at = '2026-03-01T07:30:05.000Z'

describe('reading a recording', () => {
  // the three lines of the wire format, "Recording file"
  const example = text(
    {
      recording: 1,
      title: 'Acacia thinnings, second firing',
      kiln: { volumeL: 200, cover: 'earth' },
      charge: { massKg: 72, moisturePct: 25, pieceMm: 60 },
      roles: { 'yard/n1/firebox': 'firebox', 'yard/n1/wall': 'wall', 'yard/n1/outlet': 'outlet' },
    },
    { at, topic: 'firing/1/yard/n1/readings', payload: [{ n: 'wall', v: 20 }], retained: false },
    { at: '2026-03-01T07:31:00.000Z', action: 'light' },
    { at: '2026-03-01T09:40:00.000Z', action: 'observe', smoke: 'white', drip: 'pale' },
  )

  test('takes the example of the wire format, plain and compressed alike', () => {
    const plain = readRecording(example)
    expect(plain.header.charge).toEqual({ massKg: 72, moisturePct: 25, pieceMm: 60 })
    expect(plain.lines).toHaveLength(3)
    expect(plain.lines[2]).toMatchObject({ action: 'observe', smoke: 'white', drip: 'pale' })
    expect(readRecording(gzipSync(example))).toEqual(plain)
  })

  test('keeps every setting of the kiln that an export carries', () => {
    const config: Required<KilnConfig> = {
      ...defaultKilnConfig(),
      name: 'By the hedge',
      charge: { massKg: 72, moisturePct: 25, pieceMm: 60 },
      roles: { 'yard/n1/wall': 'wall' },
      calibration: { 'yard/n1/wall': { gain: 1.01, offset: -0.5 } },
      sign: 'moon',
      bottleL: 1.5,
      condenser: 'wet-cloths',
      prior: { firings: 2, unknowns: { draught: { mean: 0.2, sd: 0.4 } } },
    }
    const start = { at, seq: 7, config, intake: '', version: 1 }
    const { header, lines } = readRecording(text({ recording: 1, start }, { at, config }))
    expect(header.start).toEqual(start)
    expect(lines).toEqual([{ at, config }])
  })

  test('needs nothing but the version in its header', () => {
    expect(readRecording(text({ recording: 1 }))).toEqual({ header: { recording: 1 }, lines: [] })
  })

  test.each([
    ['an empty file', text(''), null],
    ['no JSON', text('hello'), 1],
    ['no header', text({ at, action: 'light' }), 1],
    ['a newer version', text({ recording: 2 }), 1],
    ['a broken line', text({ recording: 1 }, { at, action: 'light' }, '{"at":'), 3],
    ['an unknown action', text({ recording: 1 }, { at, action: 'dance' }), 2],
    ['a word that is none', text({ recording: 1 }, { at, action: 'observe', smoke: 'pink' }), 2],
    ['a line that says nothing', text({ recording: 1 }, { at }), 2],
    ['no time', text({ recording: 1 }, { at: 'yesterday', action: 'light' }), 2],
    ['a day that is none', text({ recording: 1 }, { at: '2026-13-40T00:00:00Z', action: 'light' }), 2],
    [
      'a line months after the others',
      text({ recording: 1 }, { at, action: 'light' }, { at: '2026-06-01T07:30:05.000Z', action: 'seal' }),
      3,
    ],
    ['a list', text({ recording: 1 }, '[]'), 2],
    ['no text', new Uint8Array([0xff, 0xfe, 0x00]), null],
    ['a damaged compressed file', gzipSync(example).subarray(0, 40), null],
  ])('refuses %s and names the line', (_, file, line) => {
    const problem = problemOf(file)
    expect(problem).toBeInstanceOf(RecordingProblem)
    expect(problem.line).toBe(line)
    if (line !== null) expect(problem.message).toContain(`line ${line}`)
  })
})
