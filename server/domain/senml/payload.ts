import { decodeUtf8 } from '../text/utf8.ts'

/** Wire format, rule 9. */
export const largestPayloadBytes = 65_536
/** A pack needs 2 levels, a birth document 4; depth is counted before anything recurses. */
const deepestNesting = 8

export type Parsed = { ok: true; value: unknown } | { ok: false; reason: PayloadProblem }
export type PayloadProblem = 'pack-too-large' | 'bad-utf8' | 'bad-json' | 'nested' | 'duplicate-name' | 'unsafe-name'

/** Bytes of a message to a JSON value. Never throws. Refuses what JSON.parse lets through: a name twice, names that touch prototypes. */
export function parsePayload(bytes: Uint8Array): Parsed {
  if (bytes.length > largestPayloadBytes) return { ok: false, reason: 'pack-too-large' }
  const text = decodeUtf8(bytes)
  if (text === null) return { ok: false, reason: 'bad-utf8' }
  const shape = shapeOf(text)
  if (shape.depth > deepestNesting) return { ok: false, reason: 'nested' }
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return { ok: false, reason: 'bad-json' }
  }
  const names = countNames(value)
  if (names === null) return { ok: false, reason: 'unsafe-name' }
  // Of two equal names JSON.parse keeps the last, so the text then has more colons than the value has names.
  if (names !== shape.colons) return { ok: false, reason: 'duplicate-name' }
  return { ok: true, value }
}

/** Deepest bracket and number of colons outside strings; exact for well-formed JSON, harmless for the rest. */
function shapeOf(text: string): { depth: number; colons: number } {
  let depth = 0
  let open = 0
  let colons = 0
  let inString = false
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i)
    if (code === quote) inString = !inString
    else if (inString) {
      if (code === backslash) i++
    } else if (code === openBracket || code === openBrace) {
      open++
      if (open > depth) depth = open
    } else if (code === closeBracket || code === closeBrace) open--
    else if (code === colon) colons++
  }
  return { depth, colons }
}

const quote = 0x22
const backslash = 0x5c
const openBracket = 0x5b
const closeBracket = 0x5d
const openBrace = 0x7b
const closeBrace = 0x7d
const colon = 0x3a

const unsafeNames = new Set(['__proto__', 'constructor', 'prototype'])

/** Names in all objects of the value; null when one of them is unsafe. */
function countNames(value: unknown): number | null {
  if (typeof value !== 'object' || value === null) return 0
  let count = 0
  if (Array.isArray(value)) {
    for (const item of value) {
      const inner = countNames(item)
      if (inner === null) return null
      count += inner
    }
    return count
  }
  const object = value as Record<string, unknown>
  // A parsed object has nothing but its own names, so this is Object.entries without its arrays.
  for (const name in object) {
    if (unsafeNames.has(name)) return null
    count++
    const item = object[name]
    if (typeof item !== 'object' || item === null) continue
    const inner = countNames(item)
    if (inner === null) return null
    count += inner
  }
  return count
}
