import { expect, test } from 'vitest'
import type { FiringTold } from '../../../../../server/contract/live.ts'
import { Measures } from '../../../../../web/src/lib/words/measures.ts'
import { caughtText, offText } from '../../../../../web/src/views/shelf/glance.ts'
import { en as page } from '../../../../../web/src/words/en.ts'
import { en } from '../../../../../web/src/words/shelf/en.ts'

const measures = new Measures({ language: 'en', temperature: 'C', volume: 'L', mass: 'kg' })
const told = (change: Partial<FiringTold>): FiringTold => ({
  bottles: 4,
  litres: 17.6,
  charcoalKg: 14.2,
  end: 'unloaded',
  alarms: [],
  ...change,
})

test('a row tells what was caught; what nobody measured is not told as nothing', () => {
  expect(caughtText(told({}), en, measures)).toBe('17.6 L · 14.2 kg of charcoal')
  expect(caughtText(told({ litres: null, charcoalKg: null }), en, measures)).toBe('4 bottles, not measured')
  expect(caughtText(told({ bottles: 0, litres: null, charcoalKg: null }), en, measures)).toBe('no bottle logged')
})

test('a row names what sounded, the first two of it', () => {
  expect(offText(told({}), en, page)).toBe('no alarm sounded')
  expect(offText(told({ alarms: ['condenser-warm', 'fire-dying', 'air-leak'] }), en, page)).toBe(
    'alarm: condenser warm, fire dying, and 1 more',
  )
})
