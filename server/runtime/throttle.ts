import type { Ms, Output } from '../contract/fold.ts'
import type { Call } from '../contract/vocabulary.ts'

/** When what was last told, so that estimates and forecasts come at a readable pace. Plain data: it travels in the checkpoint. */
export interface Pace {
  estimateAt: Ms | null
  forecastAt: Partial<Record<Call, Ms>>
}

export const startPace = (): Pace => ({ estimateAt: null, forecastAt: {} })

const estimateEveryMs = 60_000 // wire format: at most once a minute
const forecastEveryMs = 295_000 // wire format: about every five minutes; the fold's own five-minute grid must pass

/** Whether an output is told now; moves `pace` on. A call that changed lets the next forecasts through at once. */
export function lets(pace: Pace, output: Output): boolean {
  switch (output.kind) {
    case 'estimate':
      if (pace.estimateAt !== null && output.at - pace.estimateAt < estimateEveryMs) return false
      pace.estimateAt = output.at
      return true
    case 'forecast': {
      const last = pace.forecastAt[output.call]
      if (last !== undefined && output.at - last < forecastEveryMs) return false
      pace.forecastAt[output.call] = output.at
      return true
    }
    case 'call':
      pace.forecastAt = {}
      return true
    default:
      return true
  }
}
