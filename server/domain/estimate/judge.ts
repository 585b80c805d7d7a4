import type { Reason } from '../../contract/fold.ts'
import { stateLength } from '../kiln/layout.ts'
import type { Settings } from './settings.ts'
import type { EnsembleState } from './shape.ts'
import { beatS, memberCount } from './size.ts'
import type { Advice } from './types.ts'
import { worthPerH } from './worth.ts'

const beatMin = beatS / 60
const firstBeat = 12
/** A leak is told once four members in five need one. */
const leakChance = 0.8

/** After each beat: the worth of collecting now, and what stands advised. */
export function judge(s: EnsembleState, set: Settings): void {
  let worth = 0
  for (let m = 0; m < memberCount; m++) worth += (s.weights[m] as number) * worthPerH(s.members.kilns, m * stateLength, s.config.worth)
  s.worthNow += (worth - s.worthNow) * (beatMin / set.smoothMin)
  const st = s.standing
  if (s.history.length < firstBeat) return
  st.startMinutes = s.worthNow > set.startAbove ? st.startMinutes + beatMin : 0
  if (st.startMinutes >= set.startConfirmMin) st.start = true
  if (st.start) {
    st.stopMinutes = s.worthNow < set.stopBelow && s.ahead < set.aheadAtLeast ? st.stopMinutes + beatMin : 0
    if (st.stopMinutes >= set.stopConfirmMin) st.stop = true
  }
  const char = s.estimate?.charShare ?? 0
  st.sealMinutes = char > set.sealChar ? st.sealMinutes + beatMin : 0
  if (st.sealMinutes >= set.sealConfirmMin) st.seal = true
}

/** Advice of a burning or sealed kiln. */
export function adviceOf(s: EnsembleState): Advice {
  const e = s.estimate
  const st = s.standing
  const because: Advice['because'] = {}
  if (e) {
    const acid: Reason = { code: 'acid-share', value: e.acidShare, limit: 0.03 }
    const tar: Reason = { code: 'tar-share', value: e.tarShare, limit: 0.14 }
    const worth: Reason = { code: 'worth-now', value: s.worthNow }
    because['start-collecting'] = [acid, worth]
    because['stop-collecting'] = [tar, worth]
    because.seal = [{ code: 'charred', value: e.charShare, forS: st.sealMinutes * 60 }]
  }
  const sealed = s.sealedAt >= 0
  if (sealed) because.open = [{ code: 'hottest-upper', value: s.sealed.upperC, limit: s.config.limits.openHottestC }]
  const unsure = e ? e.smokeSd : 99
  return {
    collectWorthPerH: e ? s.worthNow : null,
    startCollecting: st.start,
    stopCollecting: st.stop,
    seal: st.seal,
    hottestUpperC: sealed ? s.sealed.upperC : null,
    airLeak: sealed && s.sealed.leakChance > leakChance,
    because,
    sure: unsure < 10 ? 'high' : unsure < 30 ? 'middle' : 'low',
  }
}
