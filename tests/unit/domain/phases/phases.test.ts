import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Phase } from '../../../../server/contract/vocabulary.ts'
import { callsOf, drum, firing, lit, minutesOf, phasesOf, play, through, withoutSmoke, type Curves } from '../firing/bench.ts'

const order: Phase[] = ['kindling', 'drying', 'breakdown', 'vinegar', 'tar', 'clearing', 'cooling', 'cold']

describe('phases', () => {
  it('never flicker, however the readings swing about their course', () => {
    const swing = fc.record({ heightK: fc.double({ min: 0, max: 18, noNaN: true }), everyMin: fc.double({ min: 3, max: 40, noNaN: true }) })
    fc.assert(
      fc.property(swing, ({ heightK, everyMin }) => {
        const swung: Curves = { ...drum, smoke: (m) => drum.smoke!(m)! + heightK * Math.sin((m / everyMin) * 2 * Math.PI) }
        const { outputs } = play(firing(swung, [lit], -5, 480))
        const ranks = phasesOf(outputs).map((p) => order.indexOf(p as Phase))
        expect(ranks).toEqual([...new Set(ranks)].sort((a, b) => a - b))
      }),
      { numRuns: 6 },
    )
  })

  it('wait for hours where the smoke stands at 75 to 87: that is drying, no fault (trade facts 8.15)', () => {
    const plateau: Curves = { smoke: through([-15, 20], [0, 20], [150, 80], [700, 83]) }
    const { outputs } = play(firing(plateau, [lit], -5, 690), { cover: 'brick', volumeL: 6000 })
    expect(phasesOf(outputs)).toEqual(['kindling', 'drying', 'breakdown'])
    expect(callsOf(outputs)).toEqual([])
  })

  it('keep wall and smoke apart: a wall of 150 with the smoke at 60 is no tar (trade facts 1.3)', () => {
    const hotEnd: Curves = {
      ...drum,
      wall: through([-15, 20], [0, 20], [60, 200], [120, 260]),
      smoke: through([-15, 20], [0, 20], [40, 55], [120, 60]),
    }
    expect(phasesOf(play(firing(hotEnd, [lit], -5, 120)).outputs)).not.toContain('tar')
  })

  it('carry why: a value, its limit, and for how long', () => {
    const { outputs } = play(firing(drum, [lit], -5, 60))
    const drying = outputs.find((o) => o.kind === 'phase' && o.phase === 'drying')
    expect(drying).toMatchObject({ because: [{ code: 'smoke-over', limit: 45, forS: expect.any(Number) as number }] })
  })

  it('fall back when the fire fails while vinegar runs, and take the start back', () => {
    const failing: Curves = {
      firebox: through([-15, 20], [0, 20], [15, 600], [120, 620], [160, 150], [400, 30]),
      wall: through([-15, 20], [0, 20], [60, 60], [120, 85], [400, 35]),
      outlet: through([-15, 20], [0, 20], [40, 55], [120, 62], [200, 35], [400, 25]),
    }
    const { outputs } = play(firing(failing, [lit], -5, 330))
    expect(phasesOf(outputs)).toEqual(['kindling', 'drying', 'vinegar', 'failed'])
    expect(callsOf(outputs)).toEqual(['start-collecting due', 'start-collecting withdrawn'])
  })

  it('do not fail where the charge runs on by itself', () => {
    const runs: Curves = { ...withoutSmoke(drum), firebox: (m) => (m > 200 ? 40 + 580 * Math.exp(-(m - 200) / 40) : drum.firebox!(m)) }
    expect(phasesOf(play(firing(runs, [lit], -5, 420)).outputs)).not.toContain('failed')
  })

  it('go to cooling with the logged seal at once', () => {
    const { outputs } = play(firing(drum, [lit, [541, { action: 'seal' }]], -5, 543))
    expect(minutesOf(outputs, 'phase', (o) => o.kind === 'phase' && o.phase === 'cooling')).toEqual([541])
  })
})
