import type { Action } from '../../../../server/contract/actions.ts'
import type { Ms } from '../../../../server/contract/fold.ts'
import type { KilnView } from '../../../../server/contract/live.ts'
import type { AlarmCode, Call } from '../../../../server/contract/vocabulary.ts'
import type { Words } from '../../words/en.ts'
import { keptNotes } from '../../words/kept-notes.ts'
import { standing } from '../alarms/standing.ts'
import { fireCameBack } from '../words/came-back.ts'
import { isUnloading, looksLit, watchedUntil } from '../words/sentence.ts'
import { lastOf, logOf } from './log.ts'

export type KeyName = keyof Words['keys']
export type Six = [KeyName, KeyName, KeyName, KeyName, KeyName, KeyName]

/** Keys that log at once. All others open a panel or change the look; what can not be undone always takes two touches in two places. */
export const directActs: Partial<Record<KeyName, Action>> = {
  light: { action: 'light' },
  relight: { action: 'light' },
  refuel: { action: 'refuel' },
  'wet-condenser': { action: 'wet-condenser' },
  'start-collecting': { action: 'start-collecting' },
  'stop-collecting': { action: 'stop-collecting' },
  'stop-feeding': { action: 'stop-feeding' },
  reseal: { action: 'reseal' },
  refine: { action: 'refine' },
}

/** The six keys of this phase. Recurring ones keep their place: fire first, cloths second, drip fourth, smoke fifth. */
export function keysFor(kiln: KilnView, look: 'day' | 'night'): Six {
  const { firing, command } = kiln
  const lookKey: KeyName = look === 'day' ? 'nightLook' : 'dayLook'
  if (firing.phase === 'idle') return ['load', 'ready', 'weather', 'note', 'soundTest', 'light']
  if (firing.phase === 'failed') return ['refuel', 'wet-condenser', 'air', 'drip', 'smoke', 'relight']
  if (firing.phase === 'cooling' || firing.phase === 'cold') return sealedKeys(kiln, lookKey)
  const stoppedFeeding = lastOf(firing, 'stop-feeding') !== undefined
  const fire: KeyName = stoppedFeeding ? 'weather' : 'refuel'
  if (firing.collectingSince !== null) return [fire, 'wet-condenser', 'swap-bottle', 'drip', 'smoke', 'stop-collecting']
  const third: KeyName = command.do === 'stop-feeding' ? 'stop-feeding' : 'air'
  const collected = lastOf(firing, 'stop-collecting') !== undefined
  return [fire, 'wet-condenser', third, 'drip', 'smoke', collected || firing.phase === 'clearing' ? 'seal' : 'start-collecting']
}

function sealedKeys({ firing, command }: KilnView, lookKey: KeyName): Six {
  const opened = lastOf(firing, 'open')?.doneAt ?? 0
  const cracked = lastOf(firing, 'crack')?.doneAt ?? 0
  const closed = Math.max(lastOf(firing, 'reseal')?.doneAt ?? 0, firing.sealedAt ?? 0)
  if (opened > closed) return ['unload', 'reseal', 'note', 'curve', 'soundTest', lookKey]
  if (cracked > closed) return ['open', 'reseal', 'note', 'curve', 'soundTest', lookKey]
  const third: KeyName = command.do === 'trial-opening' ? 'crack' : 'note'
  return ['looked', 'reseal', third, 'curve', 'soundTest', lookKey]
}

const answers: Partial<Record<AlarmCode, KeyName>> = {
  'condenser-warm': 'wet-condenser',
  'condenser-hot': 'wet-condenser',
  'fire-dying': 'refuel',
  'fire-out': 'relight',
  'stop-overdue': 'stop-collecting',
  'seal-overdue': 'seal',
  'flame-inside': 'air',
  'air-leak': 'reseal',
  reignition: 'reseal',
  'wall-off': 'reseal',
}
const callKeys: Partial<Record<Call, KeyName>> = {
  'stop-feeding': 'stop-feeding',
  'start-collecting': 'start-collecting',
  'stop-collecting': 'stop-collecting',
  seal: 'seal',
  open: 'crack',
}

/** The key that answers the alarm, or else the due call, or else what comes first before lighting: it turns black. */
export function answerOf(kiln: KilnView): KeyName | null {
  const alarm = standing(kiln.alarms)[0]
  const answer = alarm && answers[alarm.alarm]
  if (answer) return answer
  const due = kiln.calls.find((call) => call.state === 'due')
  if (due) return callKeys[due.call] ?? null
  if (kiln.firing.phase === 'idle') return firstBeforeLighting(kiln)
  if (fireCameBack(kiln)) return 'reseal'
  if (isUnloading(kiln)) return 'unload'
  // what answers a gap hangs on what is seen in it
  if (watchedUntil(kiln) !== null) return null
  return soundIsProven(kiln) ? null : 'soundTest'
}

/** Load, list, sound, fire: in this order. */
function firstBeforeLighting(kiln: KilnView): KeyName {
  if (looksLit(kiln)) return 'light'
  if (kiln.command.do !== 'light') return 'load'
  if (!listIsGone(kiln)) return 'ready'
  return soundIsProven(kiln) ? 'light' : 'soundTest'
}

/** The list before lighting was gone through for this load. Logged as a note, in the language of who went through it. */
export function listIsGone({ firing }: KilnView): boolean {
  const told = Object.values(keptNotes.listGone)
  return logOf(firing.acts).some(({ act: { act }, takenBack }) => !takenBack && act.action === 'note' && told.includes(act.text))
}

/** When somebody last said that tablet or buzzer was heard: that it was sounded proves nothing. A log without any test says nothing against the service. */
export function soundHeardAt({ firing: { acts, armedAt } }: KilnView): Ms | null {
  const tests = logOf(acts).flatMap(({ act: { act, doneAt }, takenBack }) => (act.action === 'arm' && !takenBack ? [{ act, doneAt }] : []))
  if (tests.length === 0) return armedAt
  const answered = tests.find(({ act }) => act.tablet !== undefined || act.buzzer !== undefined)
  return answered && (answered.act.tablet === true || answered.act.buzzer === true) ? answered.doneAt : null
}

/** Heard at the start of this firing, and again since it was sealed; while the fire is driven nobody is asked. */
export function soundIsProven(kiln: KilnView): boolean {
  const { sealedAt, phase } = kiln.firing
  const heardAt = soundHeardAt(kiln)
  if (phase === 'idle') return heardAt !== null
  if (phase === 'cooling' || phase === 'cold') return heardAt !== null && heardAt >= (sealedAt ?? 0)
  return true
}
