import type { AlarmView, KilnView } from '../../../../server/contract/live.ts'
import type { AlarmState, Priority } from '../../../../server/contract/vocabulary.ts'

const rank: Record<Priority, number> = { urgent: 0, warning: 1, notice: 2 }
const shown: AlarmState[] = ['unacknowledged', 'latched-unacknowledged', 'acknowledged', 'latched-acknowledged', 'returned-unacknowledged']
const loud: AlarmState[] = ['unacknowledged', 'latched-unacknowledged', 'returned-unacknowledged']

export const isLoud = (alarm: AlarmView): boolean => loud.includes(alarm.state)
export const isOver = (alarm: AlarmView): boolean => alarm.state === 'returned-unacknowledged'

/** Alarms to show, first the one to answer: unhushed before hushed, then by priority, then what came first. */
export function standing(alarms: readonly AlarmView[]): AlarmView[] {
  return alarms
    .filter((alarm) => shown.includes(alarm.state))
    .sort(
      (a, b) =>
        Number(isLoud(b) && !isOver(b)) - Number(isLoud(a) && !isOver(a)) ||
        rank[a.priority] - rank[b.priority] ||
        Number(b.firstOut) - Number(a.firstOut) ||
        a.since - b.since,
    )
}

/** What should sound now: the highest priority that nobody has hushed and that still stands. */
export function soundOf(alarms: readonly AlarmView[]): Priority | null {
  return standing(alarms).find((alarm) => isLoud(alarm) && !isOver(alarm))?.priority ?? null
}

/** No alarm stands, and no call waits to be followed. */
export function isQuiet({ alarms, calls }: Pick<KilnView, 'alarms' | 'calls'>): boolean {
  return standing(alarms).length === 0 && !calls.some(({ state }) => state === 'due')
}
