import type { Ms, Reason } from '../../../../server/contract/fold.ts'
import type { ChannelView, KilnView } from '../../../../server/contract/live.ts'
import type { Role } from '../../../../server/contract/vocabulary.ts'
import type { Words } from '../../words/en.ts'
import { fireCameBack } from './came-back.ts'
import { channelOf } from './sentence.ts'

const unheard = /^no-(firebox|wall|outlet)$/

/** The number that stands on the screen of a role that a doubt calls unheard; null where none does. */
function shownOf({ code }: Reason, kiln: KilnView): ChannelView | null {
  const role = unheard.exec(code)?.[1] as Role | undefined
  const channel = role && channelOf(kiln, role)
  return channel && channel.value !== null && (channel.heard === 'fresh' || channel.heard === 'late') ? channel : null
}

/**
 * Doubts of which a number is shown all the same: the service looks back over minutes, the number is of now, so that it is told as too
 * little or as doubtful, never as nothing. The rest is left as it came.
 */
export function shownDoubts(doubts: readonly Reason[], kiln: KilnView, words: Words): { told: string[]; rest: Reason[] } {
  const shown = doubts.map((doubt) => shownOf(doubt, kiln)).filter((channel) => channel !== null)
  const names = (suspect: boolean): string =>
    shown
      .filter(({ quality }) => (quality === 'suspect') === suspect)
      .map(({ role }) => words.roles[role])
      .join(', ')
  const [little, doubtful] = [names(false), names(true)]
  return {
    told: [...(little ? [words.heard.little(little)] : []), ...(doubtful ? [words.heard.doubtful(doubtful)] : [])],
    rest: doubts.filter((doubt) => shownOf(doubt, kiln) === null),
  }
}

/** A leak is told by how the wall falls, which needs nine spans of ten minutes (`domain/cooling/leak.ts`). */
const firstToldMs = 90 * 60_000
/** A firebox that is hotter than this and climbs is no closed one, °C. Common practice, no source. */
const stillBurnsC = 100

/** Whether air gets into the sealed drum, as far as anything can be told of it. */
export function leakOf(kiln: KilnView, now: Ms): 'sign' | 'no-sign' | 'unknown' {
  const { alarms, channels, command, firing } = kiln
  if (fireCameBack(kiln) || alarms.some(({ alarm, state }) => alarm === 'air-leak' && state !== 'normal')) return 'sign'
  const wall = channels.some(
    ({ role, heard, value, quality }) => role === 'wall' && heard === 'fresh' && value !== null && quality === 'good',
  )
  const deaf = !wall || command.doubts.some(({ code }) => code === 'no-wall' || code === 'wall-fell-off')
  const early = firing.sealedAt === null || now - firing.sealedAt < firstToldMs
  const burns = channels.some(
    ({ role, value, slopePerH, slopeSd }) =>
      role === 'firebox' && value !== null && value > stillBurnsC && (slopePerH ?? 0) > 2 * (slopeSd ?? 0),
  )
  return deaf || early || burns ? 'unknown' : 'no-sign'
}
