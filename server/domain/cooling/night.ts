import type { Ms } from '../../contract/fold.ts'
import type { Look } from '../firing/look.ts'
import { coolingStepMs, notBefore, stepCooling } from './fit.ts'
import { judgeOpen, type OpenJudgement } from './open.ts'
import { stepOpened } from './opened.ts'
import { startCooling, type ColdStart, type Cooling } from './state.ts'

/** What is known of the sealed kiln; all null while it is not sealed. */
export interface Night {
  cooling: Cooling | null
  open: OpenJudgement | null
  openNotBefore: Ms | null
}

/** What the model of the kiln says of the sealed phase: its bound of the hottest part, °C, and whether air gets in. */
export interface NightAdvice {
  hottestUpperC: number | null
  airLeak: boolean
}

/** Once a minute, from the seal on. */
export function stepNight(night: Night, look: Look, cold: ColdStart, advice: NightAdvice | null): void {
  const { sealedAt } = look.facts
  if (sealedAt === null) {
    night.cooling = null
    night.open = null
    night.openNotBefore = null
    return
  }
  if (night.cooling?.sealedAt !== sealedAt) {
    night.cooling = startCooling(sealedAt)
    night.openNotBefore = null
  }
  stepOpened(night.cooling, look)
  if (look.at % coolingStepMs !== 0) return
  stepCooling(night.cooling, look, cold)
  night.open = judgeOpen(night.cooling, look, advice?.hottestUpperC ?? null, advice?.airLeak ?? false)
  // what was told once stands: it may only move on
  const surely = notBefore(night.cooling, look)
  if (surely !== null) night.openNotBefore = Math.max(night.openNotBefore ?? 0, surely)
}
