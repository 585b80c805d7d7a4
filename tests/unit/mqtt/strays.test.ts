import { expect, test } from 'vitest'
import { Strays } from '../../../server/mqtt/strays.ts'

function strays() {
  const lines: object[] = []
  return { lines, strays: new Strays({ info: () => {}, warn: (fields) => void lines.push(fields) }) }
}

test('a flood of invented topics stays within its list and its lines; one who goes on sending stays to be seen', () => {
  const { lines, strays: kept } = strays()
  for (let n = 0; n < 10_000; n++) {
    kept.note('foreign-topic', `x/${String(n)}`, n)
    if (n % 10 === 0) kept.note('other-site', 'firing/1/elsewhere/n1/readings', n)
  }
  expect(kept.topics()).toHaveLength(20)
  expect(kept.topics()).toContainEqual({ topic: 'firing/1/elsewhere/n1/readings', reason: 'other-site', times: 1000 })
  expect(kept.topics()[0]).toEqual({ topic: 'x/9999', reason: 'foreign-topic', times: 1 })
  expect(kept.pushedOut()).toBe(10_001 - 20)
  expect(lines).toHaveLength(20)
})

test('the log speaks again in the next hour', () => {
  const { lines, strays: kept } = strays()
  for (let n = 0; n < 30; n++) kept.note('foreign-topic', `x/${String(n)}`, 0)
  kept.note('foreign-topic', 'x/0', 3_600_000)
  expect(lines).toHaveLength(21)
  expect(lines.at(-1)).toEqual({ topic: 'x/0', reason: 'foreign-topic' })
})
