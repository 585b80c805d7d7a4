import { describe, expect, test } from 'vitest'
import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import { makeKilnFold } from '../../../server/domain/firing/fold.ts'
import type { KilnFold } from '../../../server/domain/firing/types.ts'
import { play } from '../../../server/recordings/play.ts'
import { plainIntake } from '../../support/plain-intake.ts'
import { storyHeader, storyLines } from '../../support/firing-story.ts'

// by rules alone: what is tested here is the driver
const kilnFold = makeKilnFold<never>(null)
const folds = { intake: plainIntake, kiln: kilnFold }

describe('playing a recording', () => {
  test('tells phases in order and ends with the number of readings', () => {
    const events = [...play(folds, { header: storyHeader, lines: storyLines(1) })]
    expect(events.filter((e) => e.event === 'phase').map((e) => e.phase)).toContain('kindling')
    expect(events.at(-1)).toEqual({ at: '2026-03-01T08:29:50.000Z', event: 'end', readings: 3 * 360, refused: {} })
    expect(events.map((e) => e.at)).toEqual(events.map((e) => e.at).sort())
  })

  test('tells the same every time', () => {
    const once = JSON.stringify([...play(folds, { header: storyHeader, lines: storyLines(1) })])
    expect(JSON.stringify([...play(folds, { header: storyHeader, lines: storyLines(1) })])).toBe(once)
  })

  test('ticks every whole second between the lines, through gaps, and not after the last line', () => {
    const ticks: number[] = []
    const counting: KilnFold<number> = {
      version: 1,
      start: () => 0,
      step(state, input) {
        if (input.kind === 'tick') ticks.push(input.at)
        return { state, outputs: [] }
      },
      view: (_, at) => kilnFold.view(kilnFold.start(defaultKilnConfig()), at),
      freeze: () => new Uint8Array(),
      thaw: () => 0,
    }
    const line = (at: string) => ({ at, action: 'note', text: 'x' }) as const
    const lines = [line('2026-03-01T07:00:00.500Z'), line('2026-03-01T07:00:02.000Z'), line('2026-03-01T08:00:00.999Z')]
    const events = [...play({ intake: plainIntake, kiln: counting }, { header: { recording: 1 }, lines })]
    const first = Date.UTC(2026, 2, 1, 7, 0, 1)
    expect(ticks).toEqual(Array.from({ length: 3600 }, (_, i) => first + 1000 * i))
    expect(events).toHaveLength(1)
  })

  test('a recording of nothing ends at once', () => {
    expect([...play(folds, { header: { recording: 1 }, lines: [] })]).toEqual([
      { at: '1970-01-01T00:00:00.000Z', event: 'end', readings: 0, refused: {} },
    ])
  })
})
