import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import type { ActionName } from '../../server/contract/actions.ts'
import type { Call } from '../../server/contract/vocabulary.ts'
import { kilnFold } from '../../server/domain/firing/fold.ts'
import { intakeFold } from '../../server/domain/intake/fold.ts'
import { playLines } from '../../server/recordings/play.ts'
import { readRecording } from '../../server/recordings/read.ts'

const minute = 60_000
const longestMin = 30
const doneBy: Partial<Record<Call, ActionName>> = {
  'start-collecting': 'start-collecting',
  'stop-collecting': 'stop-collecting',
  seal: 'seal',
  open: 'crack',
}

it('in the demo every call is given, and then done within half an hour (else: npm run demo-firing)', () => {
  const recording = readRecording(readFileSync('server/simulator/demo/demo-firing.jsonl.gz'))
  const done = new Map(recording.lines.flatMap((line) => ('action' in line ? [[line.action, Date.parse(line.at)] as const] : [])))
  const given = new Map<Call, number>()
  for (const { effects } of playLines({ intake: intakeFold, kiln: kilnFold }, recording)) {
    for (const effect of effects) {
      if (effect.kind !== 'output' || effect.output.kind !== 'call' || effect.output.state !== 'due') continue
      given.set(effect.output.call, effect.output.at)
    }
  }
  for (const [call, action] of Object.entries(doneBy) as [Call, ActionName][]) {
    const waitedMin = ((done.get(action) ?? NaN) - (given.get(call) ?? NaN)) / minute
    expect(waitedMin, call).toBeGreaterThan(0)
    expect(waitedMin, call).toBeLessThan(longestMin)
  }
  expect([...given.keys()].filter((call) => !(call in doneBy))).toEqual([])
})
