import { describe, expect, it } from 'vitest'
import type { Act, Action } from '../../../../server/contract/actions.ts'
import { collectedFrom } from '../../../../server/domain/lots/collected.ts'
import type { SmokeLine } from '../../../../server/domain/lots/collected.ts'

const hour = 3_600_000
const minute = 60_000
let number = 0
function act(atH: number, action: Action, more: Partial<Act> = {}): Act {
  number += 1
  return { id: `a${String(number)}`, at: atH * hour, doneAt: atH * hour, act: action, ...more }
}
/** 60 °C at the start and 20 K more every hour. */
const smoke: SmokeLine = {
  t: Array.from({ length: 600 }, (_, i) => i * minute),
  value: Array.from({ length: 600 }, (_, i) => 60 + i / 3),
  by: 'probe',
  probeAt: 'chimney-mouth',
}

describe('what a firing’s log says of its bottles', () => {
  it('cuts the collecting into bottles with their windows', () => {
    const { bottles } = collectedFrom(
      [
        act(1, { action: 'start-collecting' }),
        act(2, { action: 'swap-bottle', litres: 2.5 }),
        act(3, { action: 'swap-bottle' }),
        act(4, { action: 'stop-collecting' }),
      ],
      smoke,
      9 * hour,
    )
    expect(bottles.map(({ number: n, volumeMl, from, to }) => [n, volumeMl, from / hour, to / hour])).toEqual([
      [1, 2500, 1, 2],
      [2, null, 2, 3],
      [3, null, 3, 4],
    ])
    expect(bottles[0]?.smoke).toEqual({ lowC: 80, highC: 100, by: 'probe', probeAt: 'chimney-mouth' })
  })

  it('takes a bottle that was carried away at the stop for the last one', () => {
    const acts = [
      act(1, { action: 'start-collecting' }),
      act(2, { action: 'swap-bottle', litres: 1 }),
      act(2, { action: 'stop-collecting' }),
    ]
    expect(collectedFrom(acts, null, 9 * hour).bottles).toHaveLength(1)
  })

  it('ends an unclosed bottle with the log, and finds none where nothing was collected', () => {
    expect(collectedFrom([act(1, { action: 'start-collecting' })], smoke, 5 * hour).bottles).toMatchObject([
      { to: 5 * hour, smoke: { highC: 160 } },
    ])
    expect(collectedFrom([act(0, { action: 'light' }), act(2, { action: 'swap-bottle' })], smoke, 5 * hour).bottles).toEqual([])
  })

  it('counts a corrected entry as its correction says', () => {
    const start = act(1, { action: 'start-collecting' })
    const late = act(3, { action: 'start-collecting' }, { doneAt: 2 * hour, corrects: start.id })
    const unload = act(30, { action: 'unload', charcoalKg: 51, finesKg: 1 })
    const right = act(31, { action: 'unload', charcoalKg: 15.1, finesKg: 0.9 }, { doneAt: 30 * hour, corrects: unload.id })
    const collected = collectedFrom([right, unload, late, start, act(4, { action: 'stop-collecting' })], smoke, 40 * hour)
    expect(collected).toMatchObject({ charcoalG: 15_100, finesG: 900, bottles: [{ from: 2 * hour, to: 4 * hour }] })
  })
})
