import type { HeardWord, RehearsalScene } from '../../../../server/contract/setup.ts'

export type Verdict = 'good' | 'bad' | 'partly' | 'never'

/** What a rehearsal came to: only what somebody heard counts as sounded. */
export function verdictOf(scene: RehearsalScene, word: HeardWord | undefined): Verdict {
  if (!word) return 'never'
  if (scene === 'service') return word.buzzer === true ? 'good' : 'bad'
  if (word.told === null || word.tablet !== true || word.buzzer === false) return 'bad'
  return word.buzzer === null ? 'partly' : 'good'
}
