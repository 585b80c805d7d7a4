import { expect, it } from 'vitest'
import { Takeovers } from '../../../../server/mqtt/gate/takeovers.ts'
import { filterIsValid, readText } from '../../../../server/mqtt/gate/text.ts'

// MQTT 3.1.1, 1.5.3: what a string must not and should not hold. Non-characters: The Unicode Standard, 23.7.
it.each([0, 1, 0x1f, 0x7f, 0x80, 0x9f, 0xfdd0, 0xfdef, 0xfffe, 0xffff, 0x1fffe, 0x10ffff])('U+%i is refused', (code) => {
  expect(readText(Buffer.from(`a${String.fromCodePoint(code)}b`))).toBe(null)
})

it.each([0x20, 0x7e, 0xa0, 0xe9, 0xfdcf, 0xfdf0, 0xfeff, 0xfffd, 0x10000, 0x1fffd, 0x10fffd])('U+%i is taken as it is', (code) => {
  expect(readText(Buffer.from(`a${String.fromCodePoint(code)}b`))).toBe(`a${String.fromCodePoint(code)}b`)
})

// MQTT 3.1.1, 4.7.1, its own examples
it.each([
  ['sport/tennis/player1/#', true],
  ['#', true],
  ['sport/tennis#', false],
  ['sport/tennis/#/ranking', false],
  ['+', true],
  ['+/tennis/#', true],
  ['sport+', false],
  ['sport/+/player1', true],
])('the filter %s: %s', (filter, valid) => {
  expect(filterIsValid(filter)).toBe(valid)
})

// reliability 5, class 26
it('five takeovers of a name in a minute are allowed, the sixth is not; other names and later minutes are', () => {
  const takeovers = new Takeovers(5)
  const sixth = Array.from({ length: 6 }, (_, index) => takeovers.allow('n1', index * 1000))
  expect(sixth).toEqual([true, true, true, true, true, false])
  expect(takeovers.allow('n2', 6000)).toBe(true)
  expect(takeovers.allow('n1', 200_000)).toBe(true)
})
