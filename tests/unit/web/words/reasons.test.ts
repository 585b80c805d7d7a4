import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { dripLooks, smokeLooks } from '../../../../server/contract/vocabulary.ts'
import { en } from '../../../../web/src/words/reasons/en.ts'
import { es } from '../../../../web/src/words/reasons/es.ts'

/** What may stand in the one open place of a code that is put together. */
const parts: Record<string, readonly string[]> = {
  'seen-drip-': dripLooks,
  'seen-smoke-': smokeLooks,
  'no-': ['firebox', 'wall', 'outlet'],
  '-near-air': ['firebox', 'smoke', 'core'],
}

function domainText(folder: string): string {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(join(folder, file), 'utf8'))
    .join('\n')
}

/** Every reason code that the pure core can say, as its source says it. */
function codesInDomain(): { codes: Set<string>; unknown: string[] } {
  const rooms = ['calls', 'phases', 'firing', 'alarms', 'cooling', 'condenser', 'estimate']
  const text = rooms.map((room) => domainText(join('server/domain', room))).join('\n')
  const codes = new Set<string>()
  const unknown: string[] = []
  for (const [, code] of text.matchAll(/\bcode: '([a-z0-9-]+)'/g)) codes.add(code ?? '')
  for (const [, one, other] of text.matchAll(/\bcode: \w+ \? '([a-z0-9-]+)' : '([a-z0-9-]+)'/g)) codes.add(one ?? '').add(other ?? '')
  for (const [, code] of text.matchAll(/\bask\(votes, '([a-z0-9-]+)'/g)) codes.add(code ?? '')
  for (const [, code] of text.matchAll(/\baskBelow\(votes, '([a-z0-9-]+)'/g)) codes.add(`${code}-under`)
  for (const [, before = '', after = ''] of text.matchAll(/\bcode: `([a-z0-9-]*)\$\{[^}]+\}([a-z0-9-]*)`/g)) {
    if (before === '' && after === '-under') continue // from askBelow, above
    const fill = parts[before] ?? parts[after]
    if (!fill) unknown.push(`${before}…${after}`)
    else for (const part of fill) codes.add(`${before}${part}${after}`)
  }
  return { codes, unknown }
}

describe('reason codes', () => {
  const { codes, unknown } = codesInDomain()

  test('there are many, so the search finds them', () => {
    expect(codes.size).toBeGreaterThan(40)
    expect(unknown).toEqual([])
  })

  test('every code that the core can say has words', () => {
    // a range comes as two codes and is told in one sentence
    const told = [...codes].filter((code) => !/^(litres|vapour)-lost-(least|most)$/.test(code))
    expect(told.filter((code) => !(code in en))).toEqual([])
  })

  test('Spanish has them in its own words', () => {
    const measures = { temperature: () => '1 °C', kelvins: () => '1 °C', number: () => '1', percent: () => '1 %', kilograms: () => '1 kg' }
    const reason = { code: 'x', value: 1, limit: 2, forS: 600 }
    for (const code of Object.keys(en) as (keyof typeof en)[]) {
      const english = (en[code] as (...args: unknown[]) => string)(reason, measures, 'x')
      expect((es[code] as (...args: unknown[]) => string)(reason, measures, 'x'), code).not.toBe(english)
    }
  })
})
