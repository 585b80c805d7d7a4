import { describe, expect, it } from 'vitest'
import { resolvePack } from '../../../../server/domain/senml/resolve.ts'
import type { SenmlRecord } from '../../../../server/domain/senml/resolve.ts'
import { toPrimary } from '../../../../server/domain/senml/units.ts'

function resolved(pack: unknown[]): SenmlRecord[] {
  const result = resolvePack(pack)
  if (!result.ok) throw new Error(result.reason)
  return result.records
}
const problems = (pack: unknown[]) => {
  const result = resolvePack(pack)
  return result.ok ? result.problems : result.reason
}

// Examples of RFC 8428, section 5.1, with what they resolve to (section 5.1 and 4.6; instrument facts 5.2).
describe('the examples of RFC 8428', () => {
  it('5.1.1: one reading, no time', () => {
    expect(resolved([{ n: 'urn:dev:ow:10e2073a01080063', u: 'Cel', v: 23.1 }])).toMatchObject([
      { name: 'urn:dev:ow:10e2073a01080063', unit: 'Cel', timeS: 0, value: 23.1 },
    ])
  })

  it('5.1.2: a base name holds for what follows, a base time is added', () => {
    const records = resolved([
      { bn: 'urn:dev:ow:10e2073a01080063:', n: 'voltage', u: 'V', v: 120.1 },
      { n: 'current', u: 'A', v: 1.2 },
    ])
    expect(records.map(({ name }) => name)).toEqual(['urn:dev:ow:10e2073a01080063:voltage', 'urn:dev:ow:10e2073a01080063:current'])
  })

  it('5.1.2, second: base time, base unit, its own unit, version 5', () => {
    const records = resolved([
      { bn: 'urn:dev:ow:10e2073a0108006:', bt: 1.276020076001e9, bu: 'A', bver: 5, n: 'voltage', u: 'V', v: 120.1 },
      { n: 'current', t: -5, v: 1.2 },
      { n: 'current', t: -4, v: 1.3 },
      { n: 'current', t: -3, v: 1.4 },
      { n: 'current', t: -2, v: 1.5 },
      { n: 'current', t: -1, v: 1.6 },
      { n: 'current', v: 1.7 },
    ])
    expect(records.map(({ unit }) => unit)).toEqual(['V', 'A', 'A', 'A', 'A', 'A', 'A'])
    expect(records.map(({ timeS }) => timeS)).toEqual([
      1276020076.001, 1276020071.001, 1276020072.001, 1276020073.001, 1276020074.001, 1276020075.001, 1276020076.001,
    ])
    expect(records.map(({ value }) => value)).toEqual([120.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7])
  })

  it('5.1.3: a moving thing, thirteen records, the battery at 1320067614', () => {
    const records = resolved([
      { bn: 'urn:dev:ow:10e2073a01080063', bt: 1.320067464e9, bu: '%RH', v: 20 },
      { u: 'lon', v: 24.30621 },
      { u: 'lat', v: 60.07965 },
      { t: 60, v: 20.3 },
      { u: 'lon', t: 60, v: 24.30622 },
      { u: 'lat', t: 60, v: 60.07965 },
      { t: 120, v: 20.7 },
      { u: 'lon', t: 120, v: 24.30623 },
      { u: 'lat', t: 120, v: 60.07966 },
      { u: '%EL', t: 150, v: 98 },
      { t: 180, v: 21.2 },
      { u: 'lon', t: 180, v: 24.30628 },
      { u: 'lat', t: 180, v: 60.07967 },
    ])
    expect(records).toHaveLength(13)
    expect(records.filter(({ unit }) => unit === '%RH').map(({ timeS }) => timeS)).toEqual([1320067464, 1320067524, 1320067584, 1320067644])
    expect(records.find(({ unit }) => unit === '%EL')).toMatchObject({ timeS: 1320067614, value: 98 })
  })

  it('5.1.5: text, truth and data are no numbers here; the text is kept', () => {
    const result = resolvePack([
      { bn: 'urn:dev:ow:10e2073a01080063:', n: 'temp', u: 'Cel', v: 23.1 },
      { n: 'label', vs: 'Machine Room' },
      { n: 'open', vb: false },
      { n: 'nfv-reader', vd: 'aGkgCg' },
    ])
    expect(result).toMatchObject({
      records: [{ value: 23.1 }, { value: null, text: 'Machine Room' }],
      problems: [
        { index: 2, reason: 'no-number' },
        { index: 3, reason: 'no-number' },
      ],
    })
  })

  it('5.1.6: a second base name keeps the base time', () => {
    const records = resolved([
      { bn: '2001:db8::2/', bt: 1.320078429e9, n: 'temperature', u: 'Cel', v: 25.2 },
      { n: 'humidity', u: '%RH', v: 30 },
      { bn: '2001:db8::1/', n: 'temperature', u: 'Cel', v: 12.3 },
      { n: 'humidity', u: '%RH', v: 67 },
    ])
    expect(records.at(-1)).toMatchObject({ name: '2001:db8::1/humidity', timeS: 1320078429, value: 67 })
  })

  it('5.1.7: later records of a set of lights', () => {
    const records = resolved([
      { bt: 1.320078429e9, bu: '/', n: '2001:db8::3', v: 1 },
      { n: '2001:db8::4', v: 0 },
      { n: '2001:db8::3', t: 0.1, v: 0 },
    ])
    expect(records.at(-1)?.timeS).toBe(1320078429.1)
  })
})

describe('base value', () => {
  it('is added to what follows, until another comes', () => {
    expect(
      resolved([{ bv: 20, n: 'a', v: 1 }, { n: 'b', v: 2 }, { bv: -1, n: 'c', v: 0 }, { bv: 0 }, { n: 'd', v: -0 }]).map(
        ({ value }) => value,
      ),
    ).toEqual([21, 22, -1, 0])
  })
})

describe('one bad record is left out and named, the others are kept', () => {
  it.each([
    ['a number', 5, 'not-a-record'],
    ['a list', [], 'not-a-record'],
    ['null', null, 'not-a-record'],
    ['two values', { n: 'a', v: 1, vs: 'fault:open' }, 'two-values'],
    ['no value', { n: 'a' }, 'no-value'],
    ['only a sum', { n: 'a', s: 4 }, 'no-number'],
    ['a number as text', { n: 'a', v: '31' }, 'bad-number'],
    ['a number too big for a double', { n: 'a', v: Infinity }, 'bad-number'],
    ['null as value', { n: 'a', v: null }, 'bad-number'],
    ['a time as text', { n: 'a', v: 1, t: 'now' }, 'bad-number'],
    ['a unit that is no text', { n: 'a', v: 1, u: 7 }, 'bad-field'],
    ['a name that is no text', { n: 7, v: 1 }, 'bad-name'],
    ['no name at all', { v: 1 }, 'bad-name'],
    ['a space in the name', { n: 'the wall', v: 1 }, 'bad-name'],
    ['a name that starts with a dot', { n: '.wall', v: 1 }, 'bad-name'],
    ['a letter outside the set', { n: 'wänd', v: 1 }, 'bad-name'],
    ['a list inside', { n: 'a', v: 1, x: [1] }, 'nested'],
    ['an object as value', { n: 'a', v: { c: 31 } }, 'nested'],
  ])('%s', (_, record, reason) => {
    const result = resolvePack([{ n: 'first', v: 1 }, record, { n: 'last', v: 2 }])
    expect(result).toMatchObject({ ok: true, problems: [{ index: 1, reason }] })
    expect(result.ok && result.records.map(({ name }) => name)).toEqual(['first', 'last'])
  })

  it('ignores labels that it does not know (RFC 8428, 4.4)', () => {
    expect(problems([{ n: 'a', v: 1, colour: 'blue' }])).toEqual([])
  })
})

describe('what makes the whole pack useless', () => {
  it.each([
    ['no records', [], 'empty-pack'],
    ['513 records', Array.from({ length: 513 }, () => ({ n: 'a', v: 1 })), 'too-many-records'],
    ['a label that must be understood (RFC 8428, 4.4)', [{ n: 'a', v: 1, fancy_: true }], 'unknown-label'],
    ['version 42: a feature that is not known (RFC 9100)', [{ bver: 42, n: 'a', v: 1 }], 'unknown-version'],
    ['version 11', [{ bver: 11, n: 'a', v: 1 }], 'unknown-version'],
    ['version 0', [{ bver: 0, n: 'a', v: 1 }], 'unknown-version'],
    ['a version that is no number', [{ bver: '10', n: 'a', v: 1 }], 'unknown-version'],
    [
      'two versions in one pack',
      [
        { bver: 10, n: 'a', v: 1 },
        { bver: 26, n: 'b', v: 1 },
      ],
      'unknown-version',
    ],
    ['a base time that is text', [{ bt: 'now', n: 'a', v: 1 }], 'bad-base'],
    ['a base name that is a number', [{ bn: 4, n: 'a', v: 1 }], 'bad-base'],
    ['a base unit that is a number', [{ bu: 4, n: 'a', v: 1 }], 'bad-base'],
    ['a base sum that is text', [{ bs: 'x', n: 'a', v: 1 }], 'bad-base'],
  ])('%s', (_, pack, reason) => {
    expect(resolvePack(pack)).toEqual({ ok: false, reason })
  })

  it('takes 512 records and the versions 5, 10 and 26', () => {
    expect(resolvePack(Array.from({ length: 512 }, () => ({ n: 'a', v: 1 })))).toMatchObject({ ok: true })
    for (const bver of [5, 10]) expect(resolvePack([{ bver, n: 'a', v: 1 }])).toMatchObject({ ok: true, secondaryUnits: false })
    expect(resolvePack([{ bver: 26, n: 'a', v: 1 }])).toMatchObject({ ok: true, secondaryUnits: true })
  })
})

describe('units (RFC 8428 12.1, RFC 8798)', () => {
  it('turns secondary units into primary ones where the pack allows them', () => {
    expect(toPrimary(100, 'ms', true)).toEqual({ unit: 's', value: 0.1 })
    expect(toPrimary(10, 'dBm', true)).toEqual({ unit: 'dBW', value: -20 })
    expect(toPrimary(50, 'ppm', true)).toMatchObject({ unit: '/' })
    expect(toPrimary(12, 'mV', true)).toEqual({ unit: 'V', value: 0.012 })
    expect(toPrimary(36, 'km/h', true)).toMatchObject({ unit: 'm/s', value: 10 })
  })

  it('refuses them in a pack of version 10, and refuses what no registry knows', () => {
    expect(toPrimary(100, 'ms', false)).toBe('unit-version')
    expect(toPrimary(88, 'degF', true)).toBe('unknown-unit')
    expect(toPrimary(1, 'constructor', true)).toBe('unknown-unit')
    expect(toPrimary(31, 'Cel', false)).toEqual({ unit: 'Cel', value: 31 })
  })
})
