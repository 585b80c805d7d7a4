import type { Settings } from './settings.ts'

/** What the operator is advised, with how long each condition has held (minutes). */
export interface Standing {
  start: boolean
  stop: boolean
  seal: boolean
  startMinutes: number
  stopMinutes: number
  sealMinutes: number
  /** Smoothed worth an hour of collecting now, kg of good condensate. */
  worth: number
}

export function emptyStanding(): Standing {
  return { start: false, stop: false, seal: false, startMinutes: 0, stopMinutes: 0, sealMinutes: 0, worth: 0 }
}

/** Takes one look: worth an hour now, whether charring looks done. Slow smoothing, dead-bands and confirmation against flicker. */
export function look(st: Standing, set: Settings, worthNow: number, done: boolean, minutes: number, smoke: boolean): void {
  const smooth = smoke ? set.smoothSmokeMin : set.smoothMin
  st.worth += (worthNow - st.worth) * Math.min(1, minutes / smooth)
  st.startMinutes = st.worth > set.startAbove ? st.startMinutes + minutes : 0
  if (st.startMinutes >= set.startConfirmMin) st.start = true
  if (st.start) {
    st.stopMinutes = st.worth < (smoke ? set.stopBelowSmoke : set.stopBelow) ? st.stopMinutes + minutes : 0
    if (st.stopMinutes >= (smoke ? set.stopConfirmSmokeMin : set.stopConfirmMin)) st.stop = true
  }
  st.sealMinutes = done ? st.sealMinutes + minutes : 0
  if (st.sealMinutes >= set.sealConfirmMin) st.seal = true
}
