import { describe, expect, test } from 'vitest'
import { follow } from '../../../../web/src/lib/chart/fingers.ts'

const plot = { left: 100, width: 400 }
const view = { from: 0, to: 4000 }

describe('fingers on the curve', () => {
  test('one finger takes the time that it touched along', () => {
    expect(follow(view, [200], [300], plot)).toEqual({ from: -1000, to: 3000 })
  })

  test('two fingers keep under them what they touched, however they move', () => {
    for (const now of [
      [150, 450],
      [300, 310.5],
      [120, 180],
    ]) {
      const next = follow(view, [200, 300], now, plot)
      if (!next) throw new Error('no view')
      const at = (x: number): number => next.from + ((next.to - next.from) * (x - plot.left)) / plot.width
      expect(at(now[0] ?? 0)).toBeCloseTo(1000)
      expect(at(now[1] ?? 0)).toBeCloseTo(2000)
    }
  })

  test('fingers that touch or cross say nothing', () => {
    expect(follow(view, [200, 300], [250, 252], plot)).toBeNull()
    expect(follow(view, [200, 300], [300, 200], plot)).toBeNull()
  })
})
