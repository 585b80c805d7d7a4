import { expect, test } from 'vitest'
import { pictureOf } from '../../../../web/src/lib/kiln/picture.ts'
import { answerOf } from '../../../../web/src/lib/acts/keys.ts'
import { Measures } from '../../../../web/src/lib/words/measures.ts'
import { decidingRole, sentenceOf } from '../../../../web/src/lib/words/sentence.ts'
import { en } from '../../../../web/src/words/en.ts'
import { hour, kiln, minute, noon } from '../../../browser/fake/kiln.ts'

const cold = { sealedAt: noon - 20 * hour, phase: 'cold' as const }

test('a kiln that stands open to be unloaded is drawn open, and its wall still says most', () => {
  const open = kiln({ firing: cold, command: { do: 'none' } })
  expect(pictureOf(open, noon)).toMatchObject({ sealed: false, flames: 0, smoke: 'none', drip: 'none' })
  expect(decidingRole(open)).toBe('wall')
  expect(pictureOf(kiln({ firing: cold, command: { do: 'keep-shut' } }), noon).sealed).toBe(true)
})

// thirty minutes of watching: trade facts 7.3
test('a gap that stands is no longer called for: it is watched, then asked about, and the sound test is not the black key meanwhile', () => {
  const crack = { id: 'c', at: noon, doneAt: noon, act: { action: 'crack' as const } }
  const cracked = kiln({ firing: { ...cold, armedAt: null, acts: [crack] }, command: { do: 'trial-opening', next: null }, alarms: [] })
  const measures = new Measures({ language: 'en', temperature: 'C', volume: 'L', mass: 'kg' })
  const said = (after: number) => sentenceOf(cracked, noon + after * minute, en, measures)
  expect(said(4)).toMatchObject({ command: 'Watch the gap.', until: expect.stringContaining('Watch the small gap until') as string })
  expect(said(31)).toMatchObject({ command: 'Watch the gap.', until: en.gapOver })
  expect(answerOf(cracked)).toBeNull()
  // closed again: it is called for anew
  const closed = { ...crack, id: 'r', doneAt: noon + minute, act: { action: 'reseal' as const } }
  const again = kiln({ firing: { ...cold, acts: [crack, closed] }, command: { do: 'trial-opening', next: null } })
  expect(sentenceOf(again, noon + 2 * minute, en, measures).command).toBe(en.commands['trial-opening'])
  expect(answerOf(kiln({ firing: { ...cold, armedAt: null }, command: { do: 'none' } }))).toBe('unload')
})
