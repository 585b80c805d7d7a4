import type { Firing } from '../../../server/simulator/firing/world.ts'
import type { Decision } from './rows.ts'
import { gridColumns, gridOf } from './worlds-grid.ts'

/** Fixed rules to be better than: hours after lighting, or limits on one probe held for five minutes (the-job.md, "Without a smoke probe"). */
export const simpleRules = [
  { name: 'clock, 2nd to 6th hour', probe: null, from: 2, to: 6 },
  { name: 'wall 70 to 240', probe: 'wall', from: 70, to: 240 },
  { name: 'smoke 80 to 150', probe: 'smoke', from: 80, to: 150 },
  { name: 'smoke 70 to 150', probe: 'smoke', from: 70, to: 150 },
] as const

const holdSteps = 30

/** What a fixed rule would have decided; null where its probe is not fitted. */
export function byRule(firing: Firing, rule: (typeof simpleRules)[number]): Decision | null {
  if (rule.probe === null) return { start: rule.from, stop: rule.to }
  const { about, columns } = gridOf(firing)
  const at = gridColumns.indexOf(rule.probe) * about.rows
  const values = new Float32Array(columns.buffer).subarray(at, at + about.rows)
  if (values.every(Number.isNaN)) return null
  const out: Decision = { start: null, stop: null }
  let [above, over] = [0, 0]
  values.forEach((v, i) => {
    const t = about.fromS + i * about.stepS
    if (t < 0 || Number.isNaN(v)) return
    above = v > rule.from ? above + 1 : 0
    over = v > rule.to ? over + 1 : 0
    if (above >= holdSteps) out.start ??= t / 3600
    if (over >= holdSteps && out.start !== null) out.stop ??= t / 3600
  })
  return out
}
