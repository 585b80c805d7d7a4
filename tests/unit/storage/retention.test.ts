import { expect, it } from 'vitest'
import { keptOf } from '../../../server/storage/sqlite/retention.ts'

// 7 daily, 4 weekly, 12 monthly: the handbook's rule (reliability, 10.1)

const named = (ms: number) => `${new Date(ms).toISOString().replaceAll(':', '-')}.db`
const dayMs = 24 * 3_600_000
const end = Date.UTC(2026, 10, 25, 20)

it('keeps the newest of each of 7 days, 4 weeks and 12 months', () => {
  const names = Array.from({ length: 2 * 800 }, (_, half) => named(end - half * (dayMs / 2)))
  const kept = [...keptOf(names)].sort().reverse()
  expect(kept.slice(0, 7)).toEqual(Array.from({ length: 7 }, (_, day) => named(end - day * dayMs)))
  // Sundays before, then last days of months
  expect(kept.slice(7).map((name) => name.slice(0, 10))).toEqual([
    '2026-11-15',
    '2026-11-08',
    ...['10-31', '09-30', '08-31', '07-31', '06-30', '05-31', '04-30', '03-31', '02-28', '01-31'].map((day) => `2026-${day}`),
    '2025-12-31',
  ])
})

it('takes nothing away from who rested for a year', () => {
  const names = [named(end), named(end - 400 * dayMs), named(end - 401 * dayMs)]
  expect(keptOf(names).size).toBe(3)
})
