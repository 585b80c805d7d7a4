import type { TimeRange } from '../../contract/live.ts'
import { pointMinutes, points, runners } from './runon.ts'
import type { Settings } from './settings.ts'
import type { EnsembleState } from './shape.ts'
import { beatS } from './size.ts'

/** The window that one runner would choose for itself (greatest sum of worth), in points from the start of the run-on. */
export function bestWindow(worth: Float32Array, runner: number): { from: number; to: number } {
  let sum = 0
  let low = 0
  let lowAt = 0
  let gain = 0
  let from = 0
  let to = 0
  for (let p = 0; p < points; p++) {
    sum += worth[p * runners + runner] as number
    if (sum < low) {
      low = sum
      lowAt = p + 1
    }
    if (sum - low > gain) {
      gain = sum - low
      from = lowAt
      to = p + 1
    }
  }
  return { from, to }
}

function sorted(values: Float32Array, p: number): number[] {
  return [...values.subarray(p * runners, (p + 1) * runners)].sort((a, b) => a - b)
}

/** Reads a finished run-on: the members' own ranges of the calls, the fan of the smoke. */
export function conclude(s: EnsembleState, set: Settings): void {
  const run = s.run
  const from = s.litAt + run.from * beatS * 1000
  const pointMs = pointMinutes * 60000
  const range = (a: number[]): TimeRange => {
    a.sort((x, y) => x - y)
    const at = (share: number): number => from + (a[Math.min(runners - 1, Math.floor(share * runners))] as number) * pointMs
    return { earliest: at(0.08), likely: at(0.5), latest: at(0.92) + pointMs }
  }
  const windows = Array.from({ length: runners }, (_, k) => bestWindow(run.worth, k))
  const through = windows.map((_, k) => {
    for (let p = 0; p < points; p++) if ((run.char[p * runners + k] as number) > set.sealChar) return p
    return points
  })
  s.ranges = { start: range(windows.map((w) => w.from)), stop: range(windows.map((w) => w.to)), seal: range(through) }
  s.view = []
  for (let p = 0; p < points; p += 2) {
    const smoke = sorted(run.smoke, p)
    s.view.push({
      t: from + (p + 1) * pointMs,
      low: smoke[2] as number,
      middle: smoke[runners / 2] as number,
      high: smoke[runners - 3] as number,
    })
  }
}
