import type { AlarmCode, AlarmState, Call, HintCode, Phase, Priority } from '../contract/vocabulary.ts'
import type { EventLine } from './events.ts'
import { alarmStateWords, alarmWords, callWords, hintWords, phaseWords, priorityWords, words } from './words/en.ts'

/** One event as a sentence for a person at a terminal; null for what would only fill the page. */
export function sentenceOf(line: EventLine): string | null {
  const what = bodyOf(line)
  return what === null ? null : `${line.at.slice(0, 10)} ${line.at.slice(11, 19)}  ${what}`
}

function bodyOf(line: EventLine): string | null {
  switch (line.event) {
    case 'phase':
      return `${words.phase} ${phaseWords[line.phase as Phase]}`
    case 'call':
      return callWords[line.call as Call][line.state === 'due' ? 'due' : 'withdrawn']
    case 'alarm': {
      const where = line.channel === undefined ? '' : ` (${String(line.channel)})`
      return `${priorityWords[line.priority as Priority]}: ${alarmWords[line.alarm as AlarmCode]}${where}: ${alarmStateWords[line.state as AlarmState]}`
    }
    case 'hint':
      return `${words.soon} ${hintWords[line.hint as HintCode]} ${words.by} ${clock(line.by)}`
    case 'forecast':
      return `  ${callWords[line.call as Call].due} ${words.expected} ${clock(line.earliest)} ${words.and} ${clock(line.latest)}, ${words.mostLikely} ${clock(line.likely)}`
    case 'end': {
      const refused = Object.entries(line.refused as Record<string, number>).map(([reason, count]) => `${reason} ${count}`)
      return `${words.ends} ${String(line.readings)} ${words.readings}, ${refused.length > 0 ? `${words.refused} ${refused.join(', ')}` : words.none}`
    }
    default:
      return null
  }
}

const clock = (iso: unknown): string => String(iso).slice(11, 16)
