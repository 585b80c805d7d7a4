import type { Checked } from '../../server/contract/entry-problems.ts'

/** The value of something that must have been accepted; otherwise the test fails with the problems that were named. */
export function taken<T>(checked: Checked<T>): T {
  if (!checked.ok) throw new Error(`refused: ${JSON.stringify(checked.problems)}`)
  return checked.value
}
