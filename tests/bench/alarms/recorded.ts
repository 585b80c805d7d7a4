import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import type { KilnFold } from '../../../server/domain/firing/types.ts'
import { play } from '../../../server/recordings/play.ts'
import { readRecording } from '../../../server/recordings/read.ts'
import type { Raised } from './score.ts'
import { happenedIn, type Happened } from './world.ts'

const ending = /\.jsonl(\.gz)?$/

/** Recordings with a truth file beside them, as `npm run worlds -- FOLDER --as recording` writes them. */
export function recordedNames(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => ending.test(name))
    .map((name) => name.replace(ending, ''))
    .sort()
}

export function readHappened(folder: string, name: string): Happened {
  return happenedIn(folder, name, null)
}

/** Plays a recording through intake and `kiln` and gives what was raised. */
export function playRecorded<K>(folder: string, { name, litMs }: Happened, kiln: KilnFold<K>): Raised[] {
  const file = readdirSync(folder).find((one) => ending.test(one) && one.replace(ending, '') === name) ?? ''
  const raised: Raised[] = []
  for (const line of play({ intake: intakeFold, kiln }, readRecording(readFileSync(join(folder, file))))) {
    if (line.event !== 'alarm' || line['state'] !== 'unacknowledged') continue
    const because = line['because'] as { code: string }[]
    raised.push({ alarm: String(line['alarm']), atMs: Date.parse(line.at) - litMs, because: because[0]?.code ?? '' })
  }
  return raised
}
