import type { Action } from '../../../../server/contract/actions.ts'
import type { Input, KilnConfig, Output } from '../../../../server/contract/fold.ts'
import { defaultKilnConfig } from '../../../../server/contract/kiln-defaults.ts'
import type { KilnView } from '../../../../server/contract/live.ts'
import type { Role } from '../../../../server/contract/vocabulary.ts'
import { makeKilnFold } from '../../../../server/domain/firing/fold.ts'
import type { KilnState } from '../../../../server/domain/firing/state.ts'

export const lightAt = Date.UTC(2026, 2, 1, 6)
const minuteMs = 60_000
export const rulesOnly = makeKilnFold<unknown>(null)

/** What the probes read, °C (ppm), by minutes after lighting; a role that is missing is not fitted, null is a fault. */
export type Curves = Partial<Record<Role, (minute: number) => number | null>>

/** A firing as inputs: a pack every 10 s, ticks between, acts at their minutes (negative before lighting). Wiggles are fixed, no chance. */
export function firing(
  curves: Curves,
  acts: [minute: number, act: Action, more?: { id?: string; doneMin?: number; corrects?: string }][],
  fromMin: number,
  toMin: number,
): Input[] {
  const inputs: Input[] = []
  let seq = 0
  const roles = Object.keys(curves) as Role[]
  for (const role of roles)
    inputs.push({ seq: ++seq, at: lightAt + fromMin * minuteMs - 5, kind: 'channel', channel: `yard/n1/${role}`, periodS: 10, lsb: 0.25 })
  const left = [...acts].sort((a, b) => a[0] - b[0])
  for (let s = fromMin * 60; s <= toMin * 60; s++) {
    const at = lightAt + s * 1000
    while (left[0] !== undefined && left[0][0] * 60 <= s) {
      const [minute, act, more = {}] = left.shift()!
      const done = lightAt + (more.doneMin ?? minute) * minuteMs
      inputs.push({
        seq: ++seq,
        at,
        kind: 'act',
        id: more.id ?? `a${seq}`,
        doneAt: done,
        act,
        ...(more.corrects === undefined ? {} : { corrects: more.corrects }),
      })
    }
    inputs.push({ seq, at, kind: 'tick' })
    if (s % 10 !== 3) continue
    seq++
    for (const role of roles) {
      const exact = curves[role]!(s / 60)
      const value = exact === null ? null : Math.round((exact + 0.6 * Math.sin(s * 1.7 + role.length)) * 4) / 4
      inputs.push({
        seq,
        at: at + 200,
        kind: 'sample',
        channel: `yard/n1/${role}`,
        t: at,
        late: false,
        quality: value === null ? 'fault:open' : 'good',
        raw: value,
        value,
      })
    }
  }
  return inputs
}

export interface Played {
  outputs: Output[]
  state: KilnState
  view: KilnView
}

export function play(inputs: readonly Input[], config: Partial<KilnConfig> = {}, fold = rulesOnly): Played {
  let state = fold.start({ ...defaultKilnConfig(), charge: { massKg: 70, moisturePct: 25 }, ...config })
  const outputs: Output[] = []
  for (const input of inputs) {
    const result = fold.step(state, input)
    state = result.state
    outputs.push(...result.outputs)
  }
  return { outputs, state, view: fold.view(state, inputs.at(-1)!.at) }
}

/** Straight lines between given points. */
export function through(...points: [minute: number, c: number][]): (minute: number) => number {
  return (m) => {
    const next = points.findIndex(([t]) => t >= m)
    if (next === 0) return points[0]![1]
    const [t1, c1] = points[next] ?? points.at(-1)!
    const [t0, c0] = points[next === -1 ? points.length - 1 : next - 1]!
    return t1 === t0 ? c1 : c0 + ((c1 - c0) * (m - t0)) / (t1 - t0)
  }
}

/** An ordinary drum: lit at 0, plateau near 66, sealed at 540. */
export const drum: Curves = {
  firebox: through([-15, 20], [0, 20], [15, 600], [540, 620], [620, 250], [800, 60], [1000, 30], [2400, 25]),
  wall: through(
    [-15, 20],
    [0, 20],
    [60, 60],
    [140, 80],
    [200, 120],
    [300, 220],
    [420, 270],
    [540, 300],
    [700, 210],
    [1000, 110],
    [1500, 50],
    [2000, 30],
    [2400, 25],
  ),
  outlet: through([-15, 20], [0, 20], [40, 55], [150, 62], [350, 55], [540, 40], [560, 24], [2400, 22]),
  smoke: through(
    [-15, 20],
    [0, 20],
    [40, 60],
    [130, 66],
    [160, 76],
    [250, 95],
    [340, 120],
    [370, 150],
    [450, 220],
    [540, 300],
    [560, 30],
    [2400, 23],
  ),
}
export const withoutSmoke = ({ firebox, wall, outlet }: Curves): Curves => ({ firebox: firebox!, wall: wall!, outlet: outlet! })
export const lit: [number, Action] = [0, { action: 'light' }]
export const minutesOf = (outputs: readonly Output[], kind: 'phase' | 'call' | 'alarm', pick: (o: Output) => boolean): number[] =>
  outputs.filter((o) => o.kind === kind && pick(o)).map((o) => Math.round((o.at - lightAt) / minuteMs))
export const phasesOf = (outputs: readonly Output[]): string[] => outputs.flatMap((o) => (o.kind === 'phase' ? [o.phase] : []))
export const callsOf = (outputs: readonly Output[]): string[] => outputs.flatMap((o) => (o.kind === 'call' ? [`${o.call} ${o.state}`] : []))
export const alarmsOf = (outputs: readonly Output[]): string[] =>
  outputs.flatMap((o) => (o.kind === 'alarm' && o.state === 'unacknowledged' ? [o.alarm] : []))
