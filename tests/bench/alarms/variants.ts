import type { Phase } from '../../../server/contract/vocabulary.ts'
import type { Ms } from '../../../server/contract/fold.ts'
import { emptyBoard, tell, tickBoard, type AlarmBoard, type Telling } from '../../../server/domain/alarms/board.ts'
import type { AlarmTable } from '../../../server/domain/alarms/definition.ts'
import type { AlarmItem } from '../../../server/domain/alarms/engine.ts'
import { alarmTable } from '../../../server/domain/alarms/tables/definitions.ts'
import { familyAlarms, type Raised } from './score.ts'
import { families } from './world.ts'

/** One way of delaying and suppressing the same conditions. */
export interface Variant {
  name: string
  onTimes: number
  byPhase: boolean
  byReason: boolean
}

const delays = [0, 0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4]
export const variants: readonly Variant[] = [
  ...delays.map((onTimes): Variant => ({ name: `on-delay x ${onTimes}`, onTimes, byPhase: true, byReason: true })),
  { name: 'no suppression by phase', onTimes: 1, byPhase: false, byReason: true },
  { name: 'no suppression by reason', onTimes: 1, byPhase: true, byReason: false },
  { name: 'no suppression', onTimes: 1, byPhase: false, byReason: false },
]

const judged = new Set<string>(families.flatMap((family) => familyAlarms[family]))

/** A board of its own that hears the same conditions as the kiln's. */
export class VariantBoard {
  readonly raised: Raised[] = []
  private readonly board: AlarmBoard = emptyBoard()
  private readonly table: AlarmTable
  private readonly variant: Variant
  private readonly litMs: Ms

  constructor(variant: Variant, litMs: Ms) {
    this.variant = variant
    this.litMs = litMs
    const changed = Object.entries(alarmTable).map(([alarm, definition]) => [
      alarm,
      { ...definition, onDelayS: definition.onDelayS * variant.onTimes, quietIn: variant.byPhase ? definition.quietIn : [] },
    ])
    this.table = Object.fromEntries(changed) as AlarmTable
  }

  hear(at: Ms, phase: Phase, telling: Telling): void {
    if (!judged.has(telling.alarm)) return
    const { onTimes, byReason } = this.variant
    this.note(at, tickBoard(this.board, this.table, at))
    const { delays, ...rest } = telling
    const own = delays === undefined ? rest : { ...rest, delays: { ...delays, onS: delays.onS * onTimes } }
    const item = tell(this.board, this.table, at, phase, byReason ? own : { ...own, quiet: false })
    if (item !== null) this.note(at, [item])
  }

  private note(at: Ms, items: readonly AlarmItem[]): void {
    for (const { alarm, state } of items) if (state === 'unacknowledged') this.raised.push({ alarm, atMs: at - this.litMs })
  }
}
