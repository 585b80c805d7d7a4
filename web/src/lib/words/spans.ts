import type { Ms } from '../../../../server/contract/fold.ts'
import type { Words } from '../../words/en.ts'
import type { Measures } from './measures.ts'

const minuteMs = 60_000
const hourMs = 3_600_000
const dayMs = 86_400_000

/** `48 s`, `21 min`, `2 h 20 min`, `3 d`. */
export function spanText(ms: number, words: Words): string {
  if (ms < minuteMs) return words.age.seconds(Math.max(0, Math.floor(ms / 1000)))
  if (ms < hourMs) return words.age.minutes(Math.floor(ms / minuteMs))
  if (ms < 2 * dayMs) return words.age.hours(Math.floor(ms / hourMs), Math.floor((ms % hourMs) / minuteMs))
  return words.age.days(Math.floor(ms / dayMs))
}

/** Since a moment: the seconds of the first minute, from then on what the hands of the clock on the screen moved, so that all places agree. */
export function sinceMs(at: Ms, now: Ms): Ms {
  const whole = (t: Ms): Ms => Math.floor(t / minuteMs) * minuteMs
  return now - at < minuteMs ? Math.max(0, now - at) : whole(now) - whole(at)
}

/** A moment as somebody says it: `14:30`, `14:30 tomorrow`. */
export function momentText(at: Ms, now: Ms, words: Words, measures: Measures): string {
  const time = measures.clock(at)
  if (measures.sameDay(at, now)) return words.when.today(time)
  if (measures.sameDay(at, now + dayMs)) return words.when.tomorrow(time)
  if (measures.sameDay(at, now - dayMs)) return words.when.yesterday(time)
  return words.when.other(time, measures.date(at))
}

/** Up to the next half hour: `not before` may only err late. */
export function notBeforeText(at: Ms, now: Ms, words: Words, measures: Measures): string {
  return momentText(Math.ceil(at / (hourMs / 2)) * (hourMs / 2), now, words, measures)
}
