import { expect, test } from 'vitest'
import { Measures } from '../../../../web/src/lib/words/measures.ts'

const here = { language: 'en', temperature: 'C', volume: 'L', mass: 'kg', look: 'day', voice: true } as const

// NIST SP 811 (2008), B.8 and 4.2: t/°F = 1.8 t/°C + 32; one US gallon 3.785 412 L; one pound 0.453 592 37 kg
test.each([
  [0, 32],
  [100, 212],
  [-40, -40],
  [150, 302],
])('%d °C is %d °F', (celsius, fahrenheit) => {
  expect(new Measures({ ...here, temperature: 'F' }).degrees(celsius)).toBe(fahrenheit)
})

test('a slope has no offset: 10 K an hour is 18 °F an hour', () => {
  expect(new Measures({ ...here, temperature: 'F' }).kelvins(-10)).toBe('18 °F')
})

test('gallons and pounds', () => {
  const measures = new Measures({ ...here, volume: 'gal', mass: 'lb' })
  expect(measures.litres(3.785412)).toBe('1.0 gal')
  expect(measures.typedLitres(1)).toBeCloseTo(3.785412, 5)
  expect(measures.kilograms(0.45359237)).toBe('1.0 lb')
  expect(measures.typedKilograms(100)).toBeCloseTo(45.359237, 9)
})

test('what is kept to the millilitre and the gram stands in a field in the unit of who types it', () => {
  const metric = new Measures(here)
  expect([metric.own('volume', 4.5), metric.own('volume', 0.85), metric.own('mass', 15.1)]).toEqual([4.5, 0.85, 15.1])
  const other = new Measures({ ...here, volume: 'gal', mass: 'lb' })
  expect([other.own('volume', 3.785412), other.own('mass', 0.45359237)]).toEqual([1, 1])
})

test('what is typed in °F comes back in °C', () => {
  expect(new Measures({ ...here, temperature: 'F' }).typedCelsius(302)).toBeCloseTo(150, 9)
})

test('a range is widened to five minutes, never narrowed', () => {
  const at = (h: number, m: number): number => new Date(2026, 9, 14, h, m).getTime()
  expect(new Measures(here).range(at(10, 12), at(10, 46))).toEqual({ from: '10:10', to: '10:50' })
})
