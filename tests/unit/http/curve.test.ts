import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { marksOf, oneColumn } from '../../../server/http/curve.ts'

describe('lines on one column of times', () => {
  test('no point is lost, and between its own points a line runs straight', () => {
    const { t, series } = oneColumn([
      { role: 'wall', t: [0, 10, 20], value: [0, 100, 0] },
      { role: 'outlet', t: [5, 15], value: [30, 40] },
    ])
    expect(t).toEqual([0, 5, 10, 15, 20])
    expect(series[0]?.values).toEqual([0, 50, 100, 50, 0])
    expect(series[1]?.values).toEqual([null, 30, 35, 40, null])
  })

  test('gaps stay gaps', () => {
    const { series } = oneColumn([
      { role: 'wall', t: [0, 10, 20, 30], value: [1, null, 3, 4] },
      { role: 'outlet', t: [5, 15, 25], value: [1, 1, 1] },
    ])
    expect(series[0]?.values).toEqual([1, null, null, null, 3, 3.5, 4])
  })

  test('whatever the lines, the column is in order and each line keeps its values at its own times', () => {
    const line = fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 500 }), fc.option(fc.integer({ min: -50, max: 900 }))), {
      selector: ([t]) => t,
    })
    fc.assert(
      fc.property(fc.array(line, { maxLength: 4 }), (lines) => {
        const ordered = lines.map((points) => [...points].sort((a, b) => a[0] - b[0]))
        const { t, series } = oneColumn(
          ordered.map((points) => ({ role: 'wall', t: points.map(([at]) => at), value: points.map(([, v]) => v) })),
        )
        expect(t).toEqual([...new Set(t)].sort((a, b) => a - b))
        ordered.forEach((points, i) => {
          for (const [at, value] of points) expect(series[i]?.values[t.indexOf(at)]).toBe(value)
        })
      }),
    )
  })

  test('marks come in order of time, acts at the time they were done', () => {
    const marks = marksOf(
      [{ cause: 1, n: 0, at: 50, kind: 'call', call: 'seal', state: 'due', because: [] }],
      [{ id: 'a', at: 90, doneAt: 20, act: { action: 'light' } }],
    )
    expect(marks).toEqual([
      { t: 20, kind: 'act', code: 'light' },
      { t: 50, kind: 'call', code: 'seal', state: 'due' },
    ])
  })
})
