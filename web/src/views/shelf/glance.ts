import type { FiringTold } from '../../../../server/contract/live.ts'
import type { Measures } from '../../lib/words/measures.ts'
import type { Words } from '../../words/en.ts'
import type { ShelfWords } from '../../words/shelf/en.ts'

/** What was caught, in one breath. */
export function caughtText({ bottles, litres, charcoalKg }: FiringTold, words: ShelfWords, measures: Measures): string {
  const liquid = litres !== null ? measures.litres(litres) : bottles > 0 ? words.unmeasured(bottles) : words.nothingCaught
  return charcoalKg === null ? liquid : `${liquid} · ${words.charcoal(measures.kilograms(charcoalKg))}`
}

/** Of a long list the first say enough; the rest is counted. */
const most = 2

/** What was off: the alarms that sounded, by their names. */
export function offText({ alarms }: FiringTold, words: ShelfWords, page: Words): string {
  if (alarms.length === 0) return words.noAlarm
  const named = alarms.slice(0, most).map((code) => page.alarms[code].name)
  const more = alarms.length - named.length
  return words.sounded([...named, ...(more > 0 ? [page.alarm.more(more)] : [])].join(', '))
}
