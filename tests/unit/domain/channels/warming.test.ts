import { describe, expect, it } from 'vitest'
import { steadiness, warmedOne } from '../../../../server/domain/channels/warming.ts'

const trail = (channel: string, ...values: number[]) => ({ channel, trail: values.map((c, i) => [i * 5000, c] as [number, number]) })

describe('the one that a hand warms', () => {
  it('has risen since its lowest, more than twice as much as any other', () => {
    expect(warmedOne([trail('yard/n1/a', 19, 18.5, 20, 22.5), trail('yard/n1/b', 18, 18.25, 18.5, 18.75)])).toEqual({
      channel: 'yard/n1/a',
      fromC: 18.5,
      toC: 22.5,
    })
  })
  it('is none while all stand still, or all warm in the sun', () => {
    expect(warmedOne([])).toBeNull()
    expect(warmedOne([trail('yard/n1/a', 18, 18.25, 18), trail('yard/n1/b')])).toBeNull()
    expect(warmedOne([trail('yard/n1/a', 18, 21), trail('yard/n1/b', 18, 20)])).toBeNull()
  })
  it('is none that only cools again', () => {
    expect(warmedOne([trail('yard/n1/a', 30, 28, 26)])).toBeNull()
  })
})

describe('a reading that stands still', () => {
  it('is judged by its last half minute', () => {
    const jumped = trail('x', 20, 20, 20, 0.5, 0.3, 0.2, 0.2, 0.3, 0.2)
    expect(steadiness(jumped)).toMatchObject({ forS: 30, spreadK: 19.8 })
    expect(steadiness(trail('x', 90, 0.25, 0.25, 0.25, 0.25, 0.25, 0.25, 0.25))).toEqual({ meanC: 0.25, spreadK: 0, forS: 30 })
    expect(steadiness(trail('x'))).toBeNull()
  })
})
