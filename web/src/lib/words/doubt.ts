import type { Reason } from '../../../../server/contract/fold.ts'
import type { Command, KilnView } from '../../../../server/contract/live.ts'
import type { Words } from '../../words/en.ts'
import type { Measures } from './measures.ts'
import { shownDoubts } from './heard.ts'
import { reasonText, sentencesOf, watchedUntil } from './sentence.ts'

// while it is collected the sentence itself says that the drip decides
const sooner: Command[] = ['wait']
const notYet: Command[] = ['start-collecting', 'stop-collecting']

/** How sure, what can not be judged, and what would change the call: one line under the why. Empty before lighting. */
export function doubtText(kiln: KilnView, words: Words, measures: Measures): string {
  const { command, firing } = kiln
  if (command.do === 'none' || command.do === 'light') return ''
  // of a sealed kiln nobody says that it is sure
  const sure = firing.sealedAt === null ? words.sure[command.sure] : ''
  const { told, rest } = shownDoubts(doubtsNow(kiln).slice(0, 2), kiln, words)
  return [
    sure,
    ...told.map((text) => `${text}.`),
    sentencesOf(rest, words, measures),
    unlessText(command.do, command.unless, words, measures),
  ]
    .filter((part) => part !== '')
    .join(' ')
}

/** Once the gap stands open, what was to be done or waited for before it helps nobody. */
function doubtsNow(kiln: KilnView): readonly Reason[] {
  const { doubts } = kiln.command
  return watchedUntil(kiln) === null ? doubts : doubts.filter(({ code }) => code !== 'one-wall-probe' && code !== 'no-core-probe')
}

function unlessText(standing: Command, reasons: readonly Reason[], words: Words, measures: Measures): string {
  if (standing === 'trial-opening') return sentencesOf(reasons, words, measures)
  if (reasons.length === 0) return ''
  const signs = reasons.map((reason) => small(reasonText(reason, words, measures))).join('; ')
  if (sooner.includes(standing)) return `${words.unless.sooner(signs)}.`
  return notYet.includes(standing) ? `${words.unless.notYet(signs)}.` : ''
}

function small(text: string): string {
  return text.charAt(0).toLocaleLowerCase() + text.slice(1)
}
