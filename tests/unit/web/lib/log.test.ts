import { expect, test } from 'vitest'
import type { Act } from '../../../../server/contract/actions.ts'
import { logOf, takenBackAct } from '../../../../web/src/lib/acts/log.ts'

const fed = (id: string, doneAt: number, corrects?: string): Act => ({
  id,
  at: 100,
  doneAt,
  act: { action: 'refuel' },
  ...(corrects && { corrects }),
})

test('a correction moves the entry, and says that it was put right', () => {
  const [line] = logOf([fed('a', 50), fed('b', 40, 'a')])
  expect(line).toMatchObject({ corrected: true, takenBack: false, act: { doneAt: 40 }, first: { id: 'a' } })
})

test('a correction of a correction stays one line', () => {
  expect(logOf([fed('a', 50), fed('b', 40, 'a'), fed('c', 30, 'b')])).toHaveLength(1)
})

test('taken back stays to be read', () => {
  const [line] = logOf([fed('a', 50), { id: 'b', at: 100, doneAt: 50, act: takenBackAct, corrects: 'a' }])
  expect(line).toMatchObject({ takenBack: true, first: { act: { action: 'refuel' } } })
})

test('newest first by when it was done, not by when it was entered', () => {
  expect(logOf([fed('late', 10), fed('early', 90)]).map((line) => line.act.id)).toEqual(['early', 'late'])
})
