import type { NodeRemark } from '../../../../server/contract/live.ts'
import type { SetupWords } from '../../words/setup/en.ts'

/** What was turned away, in words; a reason that this page does not know goes by its code. */
export function refusalLines(refused: Record<string, number>, words: SetupWords): string[] {
  const texts: Partial<Record<string, string>> = words.nodes.refusals
  return Object.entries(refused).map(([reason, times]) => words.nodes.refused(texts[reason] ?? reason, times))
}

export const remarkLines = (remarks: readonly NodeRemark[], words: SetupWords): string[] => remarks.map((one) => words.nodes.remarks[one])
