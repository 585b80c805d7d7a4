import { describe, expect, it } from 'vitest'
import { Chance } from '../../../server/simulator/chance.ts'
import { recordingOf, truthFile } from '../../../server/simulator/firing/recording.ts'
import { makeFiring } from '../../../server/simulator/firing/world.ts'

describe('chance', () => {
  it('repeats itself by seed and by nothing else', () => {
    const draw = (seed: string) => Array.from({ length: 50 }, (_, i) => new Chance(seed).branch(`b${i}`).normal())
    expect(draw('a')).toEqual(draw('a'))
    expect(draw('a')).not.toEqual(draw('b'))
  })

  it('is even and normal enough (means and spreads of 20,000 draws, four standard errors)', () => {
    const chance = new Chance('even')
    const n = 20_000
    let sum = 0
    let square = 0
    let flat = 0
    for (let i = 0; i < n; i++) {
      const x = chance.normal()
      sum += x
      square += x * x
      flat += chance.uniform()
    }
    expect(Math.abs(sum / n)).toBeLessThan(4 / Math.sqrt(n))
    expect(Math.abs(square / n - 1)).toBeLessThan((4 * Math.sqrt(2)) / Math.sqrt(n))
    expect(Math.abs(flat / n - 0.5)).toBeLessThan(4 / Math.sqrt(12 * n))
  })
})

describe('a simulated firing', () => {
  const text = (seed: string) => {
    const firing = makeFiring(seed)
    return JSON.stringify([truthFile(firing, 0), recordingOf(firing, { title: 't', litMs: 0, node: 'yard/n1' })])
  }

  it('is the same file for the same seed, whatever ran before', () => {
    const first = text('same')
    expect(text('other') === first).toBe(false)
    expect(text('same') === first).toBe(true)
  })
})
