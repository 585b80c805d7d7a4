import type { KilnConfig } from '../../../../server/contract/fold.ts'
import type { SetupAnswer } from '../../../../server/contract/setup.ts'
import { missingRoles } from './roles.ts'
import { stepNames, type StepName } from './step-names.ts'

export interface Known {
  answer: SetupAnswer
  config: KilnConfig | null
  nodes: number
  /** Something was chosen on this tablet. */
  chosen: boolean
  /** A tablet was paired as the owner's. */
  paired: boolean
}

/** Which steps stand, told from what is, not from what was touched: so it is true on every tablet. */
export function doneSteps({ answer, config, nodes, chosen, paired }: Known): Record<StepName, boolean> {
  const heard = (what: string) => answer.heard.some((word) => word.what === what)
  return {
    language: chosen,
    clock: answer.clockSure && answer.clock?.right === true,
    kiln: config !== null && (config.name !== '' || config.sign !== undefined),
    nodes: nodes > 0,
    roles: config !== null && missingRoles(config.roles).length === 0,
    calibration: config !== null && Object.keys(config.calibration).length > 0,
    sound: heard('sound'),
    tablet: paired,
    rehearsal: answer.heard.some((word) => word.what !== 'sound'),
  }
}

export const nextOpen = (done: Record<StepName, boolean>): StepName | null => stepNames.find((name) => !done[name]) ?? null

export const neighbours = (name: StepName): { before: StepName | null; after: StepName | null } => {
  const at = stepNames.indexOf(name)
  return { before: stepNames[at - 1] ?? null, after: stepNames[at + 1] ?? null }
}
