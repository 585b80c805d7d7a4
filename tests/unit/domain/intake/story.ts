import type { Input } from '../../../../server/contract/fold.ts'
import type { NodeView } from '../../../../server/contract/live.ts'
import { intakeFold } from '../../../../server/domain/intake/fold.ts'
import type { IntakeState } from '../../../../server/domain/intake/fold.ts'
import type { IntakeResult, KilnInput, Refusal } from '../../../../server/domain/intake/types.ts'

export type Sample = Omit<Extract<Input, { kind: 'sample' }>, 'seq' | 'at'>

/** A site that is told things and keeps what came of them. */
export class Story {
  state: IntakeState = intakeFold.start({ root: 'firing', site: 'yard' })
  inputs: KilnInput[] = []
  refused: Refusal[] = []
  commands: IntakeResult<IntakeState>['commands'][number][] = []
  private seq = 0

  /** @param at Unix ms; `payload` that is no bytes is sent as JSON. Returns what this one message led to. */
  say(
    at: number,
    kind: string,
    payload: unknown,
    { node = 'n1', retained = false, topic }: { node?: string; retained?: boolean; topic?: string } = {},
  ): IntakeResult<IntakeState> {
    const bytes = payload instanceof Uint8Array ? payload : new TextEncoder().encode(JSON.stringify(payload))
    const result = intakeFold.step(this.state, {
      seq: ++this.seq,
      at,
      topic: topic ?? `firing/1/yard/${node}/${kind}`,
      payload: bytes,
      retained,
    })
    this.state = result.state
    this.inputs.push(...result.inputs)
    this.refused.push(...result.refused)
    this.commands.push(...result.commands)
    return result
  }

  samples(): Sample[] {
    return samplesOf(this.inputs)
  }

  reasons(): string[] {
    return this.refused.map(({ reason }) => reason)
  }

  node(name = 'yard/n1'): NodeView {
    const view = intakeFold.view(this.state).find((known) => known.node === name)
    if (view === undefined) throw new Error(`no node ${name}`)
    return view
  }
}

export const samplesOf = (inputs: readonly KilnInput[]): Sample[] => inputs.filter((input): input is Sample => input.kind === 'sample')

export const start = Date.UTC(2026, 2, 1, 6)

export const birth = (clock: string, more: object = {}) => ({
  fw: '1.0.0',
  hw: 'esp32',
  boot: 17,
  clock,
  buffer: 7200,
  channels: [
    { n: 'firebox', u: 'Cel', sensor: 'K', converter: 'max31855', linearised: false, cj: 'firebox/cj', period: 5, lsb: 0.25 },
    { n: 'outlet', u: 'Cel', sensor: 'ds18b20', linearised: true, period: 5, lsb: 0.0625 },
  ],
  ...more,
})

interface PackSpec {
  boot?: number
  seq: number
  up: number
  /** Channel to number, or to a fault word's text. */
  values?: Record<string, number | string>
  t?: number
  ut?: number
}

/** A pack as the wire format has it. */
export function pack({ boot = 17, seq, up, values = { outlet: 31.25 }, t = 0, ut }: PackSpec): object[] {
  const records = Object.entries(values).map(([n, value]) => ({
    n,
    ...(typeof value === 'number' ? { v: value } : { vs: value }),
    t,
    ...(ut === undefined ? {} : { ut }),
  }))
  const identity = [
    { n: 'boot', u: 'count', v: boot },
    { n: 'seq', u: 'count', v: seq },
    { n: 'up', u: 's', v: up },
  ]
  return [{ bn: 'yard/n1/', bu: 'Cel' }, ...records, ...identity]
}
