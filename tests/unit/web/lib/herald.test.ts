import { expect, test } from 'vitest'
import type { Command } from '../../../../server/contract/live.ts'
import { Herald } from '../../../../web/src/lib/sound/herald.svelte.ts'
import { en } from '../../../../web/src/words/en.ts'

/** What a voice would be heard to say: `|` where it was cut. */
function heard(commands: readonly Command[]): string[] {
  const said: string[] = []
  const session = { live: { kiln: { command: { do: 'wait' as Command } } } }
  const sounder = { play: () => undefined, say: (text: string) => void said.push(text), hush: () => void said.push('|') }
  const herald = new Herald(session as never, { words: en } as never, { now: { voice: true, language: 'en' } } as never, sounder as never)
  for (const command of commands) {
    session.live.kiln.command.do = command
    herald.speak()
  }
  return said
}

test('a call that has passed is cut off, whether another comes or none', () => {
  const { call } = en.voice
  expect(heard(['wait', 'start-collecting', 'collect'])).toEqual(['|', call['start-collecting'], '|'])
  expect(heard(['stop-collecting', 'seal', 'keep-shut'])).toEqual(['|', call['stop-collecting'], '|', call.seal, '|'])
})

test('a call that stands is said once and to its end', () => {
  expect(heard(['seal', 'seal', 'seal'])).toEqual(['|', en.voice.call.seal])
})
