import type { HintCode } from '../../../../server/contract/vocabulary.ts'
import type { KilnView } from '../../../../server/contract/live.ts'
import type { Words } from '../../words/en.ts'
import { listIsGone, soundIsProven } from '../acts/keys.ts'
import { lastOf } from '../acts/log.ts'
import { isSealed, looksLit } from './sentence.ts'

export type FaceName = keyof Words['faces']

export interface Step {
  text: string
  done: boolean
  /** When it falls due, where the service says so. */
  hint: HintCode | null
}

export interface FaceView {
  name: FaceName
  steps: Step[]
  /** In this order, or all the time. */
  ordered: boolean
}

/** Work that goes on all the time, and which hint says when it falls due. */
const meanwhile: Partial<Record<FaceName, readonly (HintCode | null)[]>> = {
  kindling: ['feed-fire', null, 'check-smoke'],
  drying: ['feed-fire', 'wet-cloths', 'check-smoke', null],
  collect: ['wet-cloths', 'check-drip', 'fresh-bottle', 'feed-fire'],
  tar: [null, null, 'check-smoke'],
  'keep-shut': [null, null, null],
}

/** What the hands do in this phase of the job. */
export function faceOf(kiln: KilnView, words: Words): FaceView | null {
  const name = nameOf(kiln)
  if (!name) return null
  const hints = meanwhile[name]
  const done = name === 'light' ? [listIsGone(kiln), soundIsProven(kiln)] : []
  const texts = name === 'trial-opening' && restsOnOneProbe(kiln) ? [words.crack.pressShort, ...words.faces[name]] : words.faces[name]
  const steps = texts.map((text, index) => ({ text, done: done[index] ?? false, hint: hints?.[index] ?? null }))
  return { name, steps, ordered: hints === undefined }
}

/** The call to open hangs on one probe at the wall, which is pressed on before a gap is made. */
export function restsOnOneProbe({ command }: Pick<KilnView, 'command'>): boolean {
  return [...command.because, ...command.doubts, ...command.unless].some(({ code }) => code === 'one-wall-probe')
}

function nameOf({ command, firing, channels }: KilnView): FaceName | null {
  // nobody is told to load what may burn
  if (looksLit({ firing, channels })) return null
  if (firing.phase === 'idle') return command.do === 'light' ? 'light' : 'load'
  if (isSealed(firing)) {
    const at = (act: 'open' | 'crack' | 'reseal'): number => lastOf(firing, act)?.doneAt ?? 0
    const closed = Math.max(at('reseal'), firing.sealedAt ?? 0)
    if (at('open') > closed) return 'unload'
    if (at('crack') > closed) return 'gap'
  }
  if (command.do === 'wait') return waitingName(firing)
  return command.do === 'none' || command.do === 'light' ? null : command.do
}

function waitingName(firing: KilnView['firing']): FaceName | null {
  if (firing.phase === 'kindling') return 'kindling'
  if (firing.phase === 'clearing' || lastOf(firing, 'stop-collecting')) return 'tar'
  return firing.phase === 'drying' || firing.phase === 'breakdown' ? 'drying' : null
}
