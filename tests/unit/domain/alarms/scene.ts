import { defaultKilnConfig } from '../../../../server/contract/kiln-defaults.ts'
import type { KilnConfig } from '../../../../server/contract/fold.ts'
import type { CallView } from '../../../../server/contract/live.ts'
import type { Call, Phase, Role } from '../../../../server/contract/vocabulary.ts'
import { emptyBoard, type AlarmBoard, type Telling } from '../../../../server/domain/alarms/board.ts'
import { newItem, type AlarmItem } from '../../../../server/domain/alarms/engine.ts'
import type { FireWatch, Scene } from '../../../../server/domain/alarms/scene.ts'
import { startCalls } from '../../../../server/domain/calls/state.ts'
import { startCondenser, type CondenserWatch } from '../../../../server/domain/condenser/watch.ts'
import type { Cooling } from '../../../../server/domain/cooling/state.ts'
import { noFacts, type Facts } from '../../../../server/domain/firing/facts.ts'
import { emptyHistory, type History } from '../../../../server/domain/firing/history.ts'

export const at = Date.UTC(2026, 2, 1, 12)
export const minute = 60_000

export interface Setting {
  phase?: Phase
  /** What each minute gave, oldest first; the last one has just ended. */
  past?: Partial<Record<Role, (number | null)[]>>
  calls?: Partial<Record<Call, CallView['state']>>
  facts?: Partial<Facts>
  config?: Partial<KilnConfig>
  condenser?: Partial<CondenserWatch>
  fire?: Partial<FireWatch>
  cooling?: Partial<Cooling> | null
  modelLeak?: boolean
  items?: Partial<AlarmItem>[]
}

/** A scene of which only what is given matters. */
export function sceneOf(setting: Setting): Scene {
  const roles = ['firebox', 'wall', 'outlet', 'smoke', 'ambient'] as const
  const history = (values: (number | null)[] | undefined): History => ({ ...emptyHistory(), values: values ?? [] })
  const calls = startCalls(at)
  for (const [call, state] of Object.entries(setting.calls ?? {})) calls[call as Call].state = state
  const board: AlarmBoard = emptyBoard()
  for (const item of setting.items ?? []) board.items[item.alarm!] = { ...newItem(item.alarm!, null, 'warning', at), ...item }
  const scene: Partial<Scene> = {
    look: {
      at,
      now: {},
      past: Object.fromEntries(roles.map((role) => [role, history(setting.past?.[role])])) as Record<Role, History>,
      facts: { ...noFacts(), ...setting.facts },
      config: { ...defaultKilnConfig(), ...setting.config },
      litAt: at - 300 * minute,
    },
    phase: setting.phase ?? 'vinegar',
    calls,
    cooling: (setting.cooling ?? null) as Cooling | null,
    modelLeak: setting.modelLeak ?? false,
    condenser: { ...startCondenser(), ...setting.condenser },
    flowLPerH: { low: 2, high: 6 },
    fire: { usualC: 600, established: true, habitMin: null, ...setting.fire },
    board,
    channels: {},
    lostNodes: {},
    tended: true,
  }
  return scene as Scene
}

/** What a rule says of a scene, by alarm. */
export function toldOf(judge: (scene: Scene, tell: (telling: Telling) => void) => void, setting: Setting): Record<string, Telling> {
  const heard: Record<string, Telling> = {}
  judge(sceneOf(setting), (telling) => (heard[telling.alarm] = telling))
  return heard
}
export const steady = (value: number, minutes = 60): number[] => Array<number>(minutes).fill(value)
