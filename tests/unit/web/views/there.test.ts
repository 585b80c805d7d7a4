import { expect, it } from 'vitest'
import { dateThere, timeThere } from '../../../../web/src/views/setup/there.ts'

// the box's own zone; the day before the month in every language, and the Gregorian year in Thai, whose era newer CLDR leaves out
const at = Date.UTC(2026, 10, 28, 23, 30)
it.each([
  ['en', /^29 November 2026$/],
  ['es', /^29 de noviembre de 2026$/],
  ['th', /^29 พฤศจิกายน (ค\.ศ\. )?2026$/],
])('the clock of the box is asked about in %s as a person there would read it', (language, date) => {
  expect(timeThere(at, 90, language)).toBe('01:00')
  expect(dateThere(at, 90, language)).toMatch(date)
})
