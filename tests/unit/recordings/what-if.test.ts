import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { makeKilnFold } from '../../../server/domain/firing/fold.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { play } from '../../../server/recordings/play.ts'
import { readRecording } from '../../../server/recordings/read.ts'
import { countAlarms, limitsOf } from '../../../server/recordings/what-if.ts'

const whole = readRecording(readFileSync(new URL('../../../server/simulator/demo/demo-firing.jsonl.gz', import.meta.url)))
/** Its first ten hours: the firing with its fire; the night after it has no limit of the fire. */
const demo = { ...whole, lines: whole.lines.filter(({ at }) => Date.parse(at) < Date.parse(whole.lines[0]?.at ?? '') + 10 * 3_600_000) }
const inAll = (limits: ReturnType<typeof limitsOf>): number => {
  const count = countAlarms(demo, limits)
  for (;;) {
    const step = count.next()
    if (step.done) return step.value
  }
}

describe('what other limits would have done to a firing', () => {
  const own = limitsOf(demo)
  const before = inAll(own)
  test('is under its own limits what a replay by the rules tells', () => {
    const folds = { intake: intakeFold, kiln: makeKilnFold<never>(null) }
    const told = [...play(folds, demo)].filter((event) => event.event === 'alarm' && event.state === 'unacknowledged')
    expect(before).toBe(told.length)
  })
  test('cries more where a fire that merely sinks counts as out', () => {
    const strict = inAll({ ...own, fireOutC: 560 })
    expect(strict).toBeGreaterThan(before)
  })
  test('gives others their turn on the way', () => {
    const count = countAlarms(whole, own)
    for (let turn = 0; turn < 20; turn++) expect(count.next().done).toBe(false)
  })
})
