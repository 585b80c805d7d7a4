import type { Ms, Output, Reason } from '../../contract/fold.ts'
import type { Phase } from '../../contract/vocabulary.ts'
import type { Telling } from '../alarms/board.ts'
import type { AlarmTable } from '../alarms/definition.ts'
import type { KilnState } from './state.ts'

type Numberless<O> = O extends Output ? Omit<O, 'cause' | 'n' | 'at'> : never
export type Said = Numberless<Output>

/** The alarms of a fold, and who beside its own board hears every condition as it is judged. */
export interface AlarmDesign {
  table: AlarmTable
  listener: ((at: Ms, phase: Phase, telling: Telling) => void) | null
}

/** Collects what one step says and numbers it by its cause. */
export interface Emit {
  design: AlarmDesign
  outputs: readonly Output[]
  say(at: Ms, said: Said): void
}

class Emitter implements Emit {
  readonly design: AlarmDesign
  private readonly state: KilnState
  private readonly said: Output[] = []

  constructor(state: KilnState, design: AlarmDesign) {
    this.state = state
    this.design = design
  }

  get outputs(): readonly Output[] {
    return this.said
  }

  say(at: Ms, said: Said): void {
    const short = 'because' in said ? { ...said, because: said.because.map(shortened) } : said
    this.said.push({ cause: this.state.cause, n: this.state.n++, at, ...short })
  }
}

export const emitter = (state: KilnState, design: AlarmDesign): Emit => new Emitter(state, design)

/** Numbers of a reason to a thousandth: finer than any probe. */
function shortened(reason: Reason): Reason {
  const cut = (value: number): number => Math.round(value * 1000) / 1000
  return {
    ...reason,
    ...(reason.value === undefined ? {} : { value: cut(reason.value) }),
    ...(reason.limit === undefined ? {} : { limit: cut(reason.limit) }),
  }
}
