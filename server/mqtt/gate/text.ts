const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

/**
 * An MQTT string: well-formed UTF-8 without U+0000 (MQTT-1.5.3-1, -2). Control characters and non-characters, which the standard says
 * should not be there, are refused too: no node has a use for them, and logs and pages are safer without.
 * @returns null when it is not fit
 */
export function readText(bytes: Uint8Array): string | null {
  let plain = true
  for (const byte of bytes) {
    if (byte < 0x20 || byte === 0x7f) return null
    if (byte > 0x7f) plain = false
  }
  if (plain) return Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1')
  try {
    const text = decoder.decode(bytes)
    for (const character of text) if (forbidden(character.codePointAt(0) ?? 0)) return null
    return text
  } catch {
    return null
  }
}

function forbidden(code: number): boolean {
  return (code >= 0x80 && code <= 0x9f) || (code & 0xfffe) === 0xfffe || (code >= 0xfdd0 && code <= 0xfdef)
}

/** Wildcards stand alone in a level, `#` only at the end (MQTT-4.7.1). */
export function filterIsValid(filter: string): boolean {
  const levels = filter.split('/')
  return levels.every((level, index) => {
    if (level === '#') return index === levels.length - 1
    return level === '+' || (!level.includes('#') && !level.includes('+'))
  })
}
