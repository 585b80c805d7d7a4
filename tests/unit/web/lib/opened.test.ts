import { expect, test } from 'vitest'
import { pictureOf } from '../../../../web/src/lib/kiln/picture.ts'
import { decidingRole } from '../../../../web/src/lib/words/sentence.ts'
import { hour, kiln, noon } from '../../../browser/fake/kiln.ts'

const cold = { sealedAt: noon - 20 * hour, phase: 'cold' as const }

test('a kiln that stands open to be unloaded is drawn open, and its wall still says most', () => {
  const open = kiln({ firing: cold, command: { do: 'none' } })
  expect(pictureOf(open, noon)).toMatchObject({ sealed: false, flames: 0, smoke: 'none', drip: 'none' })
  expect(decidingRole(open)).toBe('wall')
  expect(pictureOf(kiln({ firing: cold, command: { do: 'keep-shut' } }), noon).sealed).toBe(true)
})
