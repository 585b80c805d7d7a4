import { describe, expect, test } from 'vitest'
import { pairingPage, strangerPage } from '../../../server/http/pairing-page.ts'

const code = 'AbCdEf0123456789'

describe('the pages of a browser that is not paired', () => {
  test.each([
    ['es-MX,en;q=0.5', 'es'],
    ['th', 'th'],
    ['fr-FR, TH;q=0.9, en;q=0.8', 'th'],
    ['de', 'en'],
    [undefined, 'en'],
  ])('speak the first language of %s that there is', (accepted, language) => {
    expect(strangerPage(accepted)).toContain(`<html lang="${language}">`)
    expect(pairingPage(code, accepted)).toContain(`<html lang="${language}">`)
  })

  test('say so where a machine made their words', () => {
    expect(['en', 'es', 'th'].map((language) => strangerPage(language).includes('<small>'))).toEqual([false, true, true])
  })

  test.each([[null], ['short'], ['"><script>alert(1)</script>'], ['a'.repeat(101)]])(
    'have no form for %s, which can be no code',
    (text) => {
      expect(pairingPage(text, 'en')).toBeNull()
    },
  )
})
