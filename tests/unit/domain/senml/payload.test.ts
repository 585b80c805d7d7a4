import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { parsePayload } from '../../../../server/domain/senml/payload.ts'

const bytes = (text: string) => new TextEncoder().encode(text)

// JSONTestSuite (N. Seriot, MIT licence): y_ must be accepted as JSON, n_ must be refused, i_ is free.
const corpus = fileURLToPath(new URL('../../../../../shared/corpora/json-test-suite/test_parsing/', import.meta.url))
const files = existsSync(corpus) ? readdirSync(corpus).filter((name) => name.endsWith('.json')) : []
const parse = (name: string) => parsePayload(readFileSync(corpus + name))

/** JSON, but not for this door: of a name given twice JSON.parse keeps the last without a word, so the sender could not know which number counts. */
const stricterThanJson: Record<string, string> = {
  'y_object_duplicated_key.json': 'duplicate-name',
  'y_object_duplicated_key_and_value.json': 'duplicate-name',
}

if (files.length === 0) {
  it('JSONTestSuite was not run: its files are not beside the repository', () => {
    expect(existsSync(corpus)).toBe(false)
  })
} else {
  describe(`JSONTestSuite, ${files.length} files`, () => {
    it.each([
      ['y_', 95],
      ['n_', 188],
      ['i_', 35],
    ])('has all of its %s files: %d', (prefix, count) => {
      expect(files.filter((name) => name.startsWith(prefix))).toHaveLength(count)
    })

    it('accepts all that is JSON, but for the deviations named', () => {
      for (const name of files.filter((name) => name.startsWith('y_'))) {
        const deviation = stricterThanJson[name]
        expect(parse(name), name).toMatchObject(deviation === undefined ? { ok: true } : { ok: false, reason: deviation })
      }
    })

    it('refuses all that is not', () => {
      for (const name of files.filter((name) => name.startsWith('n_'))) expect(parse(name).ok, name).toBe(false)
    })

    it('never throws on what is left open', () => {
      for (const name of files.filter((name) => name.startsWith('i_'))) expect(parse(name), name).toHaveProperty('ok')
    })
  })
}

describe('the payload door', () => {
  it.each([
    ['64 KiB and one byte', bytes(`"${'a'.repeat(65_535)}"`), 'pack-too-large'],
    ['ill-formed UTF-8', Uint8Array.of(0x22, 0xc3, 0x28, 0x22), 'bad-utf8'],
    ['nothing', bytes(''), 'bad-json'],
    ['a byte order mark', bytes('\ufeff[]'), 'bad-json'],
    ['something after the end', bytes('[] []'), 'bad-json'],
    ['nine brackets', bytes('[[[[[[[[[]]]]]]]]]'), 'nested'],
    ['a deep tower that is never closed', bytes('['.repeat(60_000)), 'nested'],
    ['a name twice', bytes('[{"n":"wall","v":1,"v":2}]'), 'duplicate-name'],
    ['a name twice, once written otherwise', bytes('{"v":1,"\\u0076":2}'), 'duplicate-name'],
    ['__proto__', bytes('{"__proto__":{"v":1}}'), 'unsafe-name'],
    ['constructor', bytes('[{"constructor":1}]'), 'unsafe-name'],
  ])('refuses %s', (_, payload, reason) => {
    expect(parsePayload(payload)).toEqual({ ok: false, reason })
  })

  it('is not misled by brackets, colons and quotes inside texts', () => {
    const value = { a: '[[[[[[[[[[[[:::"\\', b: ['\\', '":{'] }
    expect(parsePayload(bytes(JSON.stringify(value)))).toEqual({ ok: true, value })
  })

  it('takes 64 KiB exactly', () => {
    expect(parsePayload(bytes(`"${'a'.repeat(65_534)}"`))).toMatchObject({ ok: true })
  })
})
