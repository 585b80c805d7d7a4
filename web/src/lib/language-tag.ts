/**
 * The device's language as a tag that may be asked for: a browser under a POSIX locale says `en-US@posix`, at which every `Intl` throws.
 * What is left of it before the odd part is tried, then English.
 */
export function soundTag(given: string | undefined): string {
  for (const tag of [given ?? '', (given ?? '').split(/[@.]/)[0]?.replaceAll('_', '-') ?? '']) {
    try {
      if (Intl.getCanonicalLocales(tag).length > 0 && tag !== '') return tag
    } catch {
      // not a tag: the next one
    }
  }
  return 'en'
}

/** Code of others reads `navigator.language` as it is (the chart library, for its numbers): it is given a tag that holds. */
export function mendLanguageTag(device: Pick<Navigator, 'language'>): void {
  const value = soundTag(device.language)
  if (value !== device.language) Object.defineProperty(device, 'language', { value, configurable: true })
}
