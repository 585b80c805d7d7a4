import { defaultKilnConfig } from '../contract/kiln-defaults.ts'
import type { KilnConfig, Ms } from '../contract/fold.ts'
import type { RecordingHeader, RecordingLine } from '../contract/recording.ts'
import { firingWays } from '../contract/vocabulary.ts'
import { fromBase64 } from '../runtime/base64.ts'
import { Driver } from '../runtime/driver.ts'
import type { Effect, Folds } from '../runtime/driver.ts'
import { originVersion } from '../runtime/origin.ts'
import { entryOf } from './entries.ts'
import { endOf, eventOf } from './events.ts'
import type { EventLine } from './events.ts'
import type { JournalEntry } from '../storage/store.ts'
import type { Recording } from './read.ts'

/** One line of a recording and what came of it; the beginning, before the first line, has none. */
export interface Played {
  at: Ms
  entry: JournalEntry | null
  effects: Effect[]
}

/** Plays a recording by its own times through the driver of the house, line by line. */
export function* playLines<I, K>(folds: Folds<I, K>, { header, lines }: Recording): Generator<Played, Driver<I, K>> {
  const driver = driverFor(folds, header, lines)
  const config = [...driver.state.sessions.values()][0]?.config ?? defaultKilnConfig()
  let { seq, at } = driver.state
  yield { at, entry: null, effects: driver.take() }
  for (const line of lines) {
    at = Math.max(at, Date.parse(line.at)) // the axis never goes back
    const entry = entryOf(line, { seq: ++seq, at, kiln: config.kiln })
    yield { at, entry, effects: driver.drive(entry) }
  }
  return driver
}

/** Plays a recording and gives what it tells, the line `end` last. */
export function* play<I, K>(folds: Folds<I, K>, recording: Recording): Generator<EventLine> {
  const steps = playLines(folds, recording)
  let readings = 0
  let at = 0
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return yield endOf(at, readings, step.value.state.refused)
    at = step.value.at
    for (const effect of step.value.effects) {
      if (effect.kind === 'point' && effect.point.role !== 'smoke-estimated') readings++
      if (effect.kind !== 'output') continue
      const line = eventOf(effect.kiln, effect.output)
      if (line) yield line
    }
  }
}

function driverFor<I, K>(folds: Folds<I, K>, header: RecordingHeader, lines: readonly RecordingLine[]): Driver<I, K> {
  const { root, site } = placeOf(lines)
  const { start } = header
  if (start && start.version === originVersion(folds)) {
    const origin = { seq: start.seq, at: Date.parse(start.at), config: start.config, bytes: fromBase64(start.intake) }
    return Driver.from(folds, { root, site, origin })
  }
  const config = start?.config ?? configOf(header)
  const at = start ? Date.parse(start.at) : firstAt(lines)
  return Driver.fresh(folds, { root, site, at, seq: start?.seq ?? 0, configs: [config], rolling: false })
}

/** First topic level and site, as the first message names them. */
export function placeOf(lines: readonly RecordingLine[]): { root: string; site: string } {
  const first = lines.find((line) => 'topic' in line)
  const [root = 'firing', , site = 'yard'] = first && 'topic' in first ? first.topic.split('/') : []
  return { root, site }
}

function firstAt(lines: readonly RecordingLine[]): Ms {
  const first = lines[0]
  return first ? Date.parse(first.at) : 0
}

/** Defaults, with what the header says of the kiln in their place. */
export function configOf({ title, kiln, charge, roles }: RecordingHeader): KilnConfig {
  const config = defaultKilnConfig()
  const cover = (['earth', 'none', 'brick'] as const).find((known) => known === kiln?.cover)
  const way = firingWays.find((known) => known === kiln?.way)
  return {
    ...config,
    name: title ?? config.name,
    volumeL: kiln?.volumeL ?? config.volumeL,
    cover: cover ?? config.cover,
    way: way ?? config.way,
    charge: charge ?? config.charge,
    roles: roles ?? config.roles,
  }
}
