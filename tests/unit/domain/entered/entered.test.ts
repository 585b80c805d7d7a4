import { describe, expect, it } from 'vitest'
import { addDays, daysBetween, readDate } from '../../../../server/domain/entered/calendar.ts'
import { readQuantity } from '../../../../server/domain/entered/quantity.ts'

describe('a quantity as a person types it', () => {
  // NIST SP 811, appendix B: US gallon 3.785411784 L, pound 0.45359237 kg, inch 25.4 mm, acre 4046.8564 m²
  it.each([
    ['volume', '20 L', 20_000],
    ['volume', '2,5 l', 2500],
    ['volume', '500ml', 500],
    ['volume', '1 gal', 3785.411784],
    ['mass', '70 kg', 70_000],
    ['mass', '1 lb', 453.59237],
    ['length', '10 in', 254],
    ['area', '1 acre', 4046.8564224],
    ['area', '2 ha', 20_000],
  ] as const)('%s %s', (kind, text, value) => {
    expect(readQuantity('amount', kind, text)).toEqual({ ok: true, value })
  })

  it.each([
    ['volume', '20', 'wrong-unit'],
    ['volume', '20 kg', 'wrong-unit'],
    ['volume', '20 __proto__', 'wrong-unit'],
    ['mass', '-3 kg', 'too-small'],
    ['mass', 'much', 'not-a-number'],
    ['mass', '', 'not-a-number'],
  ] as const)('%s %j is refused as %s', (kind, text, code) => {
    expect(readQuantity('amount', kind, text)).toMatchObject({ ok: false, problems: [{ code }] })
  })

  it('says which units would do', () => {
    expect(readQuantity('tank', 'volume', '20 kg')).toMatchObject({
      ok: false,
      problems: [{ params: { given: 'kg', wanted: expect.stringContaining('gal') } }],
    })
  })
})

describe('calendar days', () => {
  it('counts across leap days and years', () => {
    expect(addDays('2024-02-28', 2)).toBe('2024-03-01')
    expect(daysBetween('2026-10-14', '2027-01-12')).toBe(90)
  })

  it.each(['2026-02-29', '2026-13-01', '26-01-01', 'tomorrow', '2026-01-01T00:00'])('refuses %s', (text) => {
    expect(readDate('date', text)).toMatchObject({ ok: false, problems: [{ code: 'not-a-date' }] })
  })
})
