import type { Ms, Reason } from '../../contract/fold.ts'
import { mean, slope } from '../firing/history.ts'
import { newest } from '../firing/facts.ts'
import type { Look } from '../firing/look.ts'

/** The collecting window as judged so far: opens once, shuts once; each with its reasons. */
export interface Window {
  /** Signs that the wood begins to give itself up. */
  turning: Reason[] | null
  open: boolean
  openBecause: Reason[]
  shut: boolean
  shutBecause: Reason[]
  /** Signs that charring is done, where the smoke is not measured. */
  charred: Reason[] | null
  openSince: Ms | null
  shutSince: Ms | null
}

export function startWindow(): Window {
  return { turning: null, open: false, openBecause: [], shut: false, shutBecause: [], charred: null, openSince: null, shutSince: null }
}

export function stepWindow(w: Window, look: Look): void {
  const smoke = mean(look.past.smoke, 10)
  const wall = mean(look.past.wall, 10)
  const { smokeStartC, smokeStopC } = look.config.limits
  const seenDrip = newest(look.facts.drip)?.look
  const seenSmoke = newest(look.facts.smoke)?.look
  const rate = slope(look.past.smoke, 30)
  const open: Reason[] | null =
    seenSmoke === 'yellow' && seenDrip !== 'clear'
      ? [{ code: 'seen-smoke-yellow' }]
      : smoke !== null
        ? smoke >= smokeStartC && (smoke > 88 || (rate ?? 0) >= 4)
          ? [{ code: 'smoke-over', value: smoke, limit: smokeStartC }]
          : null
        : wall !== null && wall >= 75 && seenDrip !== 'clear'
          ? [{ code: 'wall-over', value: wall, limit: 75 }]
          : null
  const shut: Reason[] | null =
    seenDrip === 'dark' || seenDrip === 'black'
      ? [{ code: `seen-drip-${seenDrip}` }]
      : smoke !== null
        ? smoke >= smokeStopC
          ? [{ code: 'smoke-over', value: smoke, limit: smokeStopC }]
          : null
        : wall !== null && wall >= 240
          ? [{ code: 'wall-over', value: wall, limit: 240 }]
          : null
  if (!w.open) {
    w.openSince = open === null ? null : (w.openSince ?? look.at)
    if (open !== null && w.openSince !== null && look.at - w.openSince >= 300_000) {
      w.open = true
      w.openBecause = open
    }
  } else if (!w.shut) {
    w.shutSince = shut === null ? null : (w.shutSince ?? look.at)
    if (shut !== null && w.shutSince !== null && (look.at - w.shutSince >= 600_000 || shut[0]?.code.startsWith('seen'))) {
      w.shut = true
      w.shutBecause = shut
    }
  }
}
