import { expect, test } from 'vitest'
import { Choice } from '../../../../web/src/lib/choice/choice.svelte.ts'
import { mendLanguageTag, soundTag } from '../../../../web/src/lib/language-tag.ts'

// BCP 47 (RFC 5646) is what Intl takes; POSIX (IEEE 1003.1, 8.2) writes language[_territory][.codeset][@modifier]
test.each([
  ['en-US@posix', 'en-US'],
  ['es_MX.UTF-8', 'es-MX'],
  ['th', 'th'],
  ['zh-Hant-TW', 'zh-Hant-TW'],
  ['C', 'en'],
  ['', 'en'],
  [undefined, 'en'],
])('%s is asked for as %s', (given, tag) => {
  expect(soundTag(given)).toBe(tag)
  expect(() => new Intl.NumberFormat(soundTag(given))).not.toThrow()
})

test('a tag that would throw is put right where others read it, a good one is left alone', () => {
  const device = Object.create({
    get language() {
      return 'en-US@posix'
    },
  }) as { language: string }
  expect(() => new Intl.NumberFormat(device.language)).toThrow(RangeError)
  mendLanguageTag(device)
  expect(new Intl.NumberFormat(device.language).format(1)).toBe('1')
  const good = { language: 'th' }
  mendLanguageTag(good)
  expect(Object.getOwnPropertyDescriptor(good, 'language')).toMatchObject({ writable: true, value: 'th' })
})

test('a language that was kept and is none of ours gives way to that of the device', () => {
  const drawer = { getItem: () => JSON.stringify({ language: 'en-US@posix', temperature: 'F' }), setItem: () => {} }
  expect(new Choice(drawer, 'es-MX').now).toMatchObject({ language: 'es', temperature: 'F' })
})
