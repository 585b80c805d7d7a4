import type { Ms, Reason } from '../../../../server/contract/fold.ts'
import type { CommandView, KilnView } from '../../../../server/contract/live.ts'
import type { Role } from '../../../../server/contract/vocabulary.ts'
import type { Words } from '../../words/en.ts'
import { channelOf } from './sentence.ts'

const unheard = /^no-(firebox|wall|outlet)$/

/** The service looks back over minutes, a number beside the sentence is of now: what is shown there is never said to be unheard. */
export function unheardText(reason: Reason, kiln: KilnView, words: Words): string | null {
  const role = unheard.exec(reason.code)?.[1] as Role | undefined
  const channel = role && channelOf(kiln, role)
  if (!channel || channel.value === null || (channel.heard !== 'fresh' && channel.heard !== 'late')) return null
  const where = words.roles[channel.role]
  return channel.quality === 'suspect' ? words.heard.doubtful(where) : words.heard.little(where)
}

/** How sure the page may say that it is: never sure where fire or wall are not heard, and far from it where neither is and nobody looked. */
export function sureOf({ sure, doubts, because }: CommandView): CommandView['sure'] {
  const missing = doubts.filter(({ code }) => code === 'no-firebox' || code === 'no-wall').length
  if (missing === 0) return sure
  if (missing === 2 && !because.some(({ code }) => code.startsWith('seen-'))) return 'low'
  return sure === 'high' ? 'middle' : sure
}

/** A leak is told by how the wall falls, which needs nine spans of ten minutes (`domain/cooling/leak.ts`). */
const firstToldMs = 90 * 60_000
/** A firebox that is hotter than this and climbs is no closed one, °C. Common practice, no source. */
const stillBurnsC = 100

/** Whether air gets into the sealed drum, as far as anything can be told of it. */
export function leakOf({ alarms, channels, command, firing }: KilnView, now: Ms): 'sign' | 'no-sign' | 'unknown' {
  if (alarms.some(({ alarm, state }) => alarm === 'air-leak' && state !== 'normal')) return 'sign'
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
