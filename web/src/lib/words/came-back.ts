import type { KilnView } from '../../../../server/contract/live.ts'

/** It burnt in the closed kiln, so it had air, and it has not been closed anew since. */
export function fireCameBack({ hints }: Pick<KilnView, 'hints'>): boolean {
  return hints.some(({ because }) => because.some(({ code }) => code === 'fire-came-back'))
}
