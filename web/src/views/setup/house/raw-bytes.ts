/** Signs that would turn, hide or break the text around them. */
const unseen = /[\p{Cc}\p{Cf}\p{Co}\p{Cn}\u2028\u2029]/gu
const bytesALine = 16

/** What a stranger sent, to look at: text where it is text, with a mark for each sign that can not be seen; else its bytes as hexadecimal digits. */
export function rawText(base64: string): string {
  const bytes = Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0))
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes).replace(unseen, '\ufffd')
  } catch {
    const digits = [...bytes].map((byte) => byte.toString(16).padStart(2, '0'))
    const lines: string[] = []
    for (let at = 0; at < digits.length; at += bytesALine) lines.push(digits.slice(at, at + bytesALine).join(' '))
    return lines.join('\n')
  }
}

export const byteCount = (base64: string): number => (base64.length / 4) * 3 - (/=*$/.exec(base64)?.[0].length ?? 0)
