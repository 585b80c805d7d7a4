import type { Limits } from '../contract/fold.ts'
import { defaultLimits } from '../contract/fold.ts'
import { makeKilnFold } from '../domain/firing/fold.ts'
import { intakeFold } from '../domain/intake/fold.ts'
import { configOf, playLines } from './play.ts'
import type { Recording } from './read.ts'

const linesAtOnce = 200

/** The limits that a recorded firing ran with. */
export function limitsOf({ header }: Recording): Limits {
  return header.start?.config.limits ?? defaultLimits
}

/**
 * How many alarms a recorded firing would have raised under other limits, by the rules alone (no physical model, so that it is quick).
 * Yields between slices of lines, so that whoever drives it can let others have their turn.
 */
export function* countAlarms(recording: Recording, limits: Limits): Generator<void, number> {
  const folds = { intake: intakeFold, kiln: makeKilnFold<never>(null) }
  let raised = 0
  let lines = 0
  for (const { effects } of playLines(folds, under(recording, limits))) {
    for (const effect of effects)
      if (effect.kind === 'output' && effect.output.kind === 'alarm' && effect.output.state === 'unacknowledged') raised++
    if (++lines % linesAtOnce === 0) yield
  }
  return raised
}

function under({ header, lines }: Recording, limits: Limits): Recording {
  // a version that no fold has makes every play begin afresh with this configuration
  const fresh = { at: lines[0]?.at ?? new Date(0).toISOString(), seq: 0, config: configOf(header), intake: '', version: -1 }
  const start = header.start ?? fresh
  return { header: { ...header, start: { ...start, version: -1, config: { ...start.config, limits } } }, lines }
}
