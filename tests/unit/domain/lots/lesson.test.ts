import { describe, expect, it } from 'vitest'
import { foldLedger } from '../../../../server/domain/lots/ledger.ts'
import { stopLesson } from '../../../../server/domain/lots/lesson.ts'
import { lifeOfALot } from '../../../support/lot-story.ts'
import { taken } from '../../../support/taken.ts'

const of = (lightOilMl: number, vinegarMl: number, tarMl: number) => stopLesson({ measured: { lightOilMl, vinegarMl, tarMl } })

describe('what the layers teach about the stop', () => {
  it.each([
    // Rahmat et al., bench: 2.93 mL oil, 487.67 mL vinegar, 41.76 g tar (at 1.15 kg/L 36.3 mL): 0.6, 92.6, 6.9 %
    [2.93, 487.67, 36.3, 6.9, 'in-time'],
    // Campos 2007: oil with water 10, vinegar 60 to 75, tar 20 to 30 %
    [10, 65, 25, 25, 'late'],
    [2, 85, 13, 13, 'rather-late'],
  ] as const)('oil %d, vinegar %d, tar %d: %d %% of tar, stopped %s', (oil, vinegar, tar, pct, stop) => {
    const lesson = of(oil, vinegar, tar)
    expect(lesson?.tarPct).toBeCloseTo(pct, 1)
    expect(lesson?.stop).toBe(stop)
  })

  it('stays with what is drawn, and is none before anything was measured', () => {
    const lots = taken(foldLedger(lifeOfALot)).lots
    const drawn = lots.get('8')
    expect(drawn?.kind === 'condensate' && stopLesson(drawn)?.tarPct).toBeCloseTo(12.2, 1)
    expect(stopLesson({ measured: null })).toBeNull()
    expect(of(0, 0, 0)).toBeNull()
  })
})
