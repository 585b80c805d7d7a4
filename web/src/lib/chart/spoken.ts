import type { KilnView } from '../../../../server/contract/live.ts'
import type { Words } from '../../words/en.ts'
import type { Measures } from '../words/measures.ts'

/** The numbers of now in one line, for who can not see the curve. */
export function spokenNow(kiln: KilnView, words: Words, measures: Measures): string {
  return kiln.channels
    .flatMap((channel) => {
      if (channel.value === null || channel.heard !== 'fresh') return []
      const { number, unit } = measures.reading(channel.role, channel.value)
      return [`${words.roles[channel.role]} ${number} ${unit}`]
    })
    .join(', ')
}
