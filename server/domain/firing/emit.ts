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

const nothing: readonly Output[] = []

export function emitter(state: KilnState, design: AlarmDesign): Emit {
  const outputs: Output[] = []
  return {
    design,
    get outputs() {
      return outputs.length === 0 ? nothing : outputs
    },
    say(at, said) {
      const short = 'because' in said ? { ...said, because: said.because.map(shortened) } : said
      outputs.push({ cause: state.cause, n: state.n++, at, ...short })
    },
  }
}

/** Numbers of a reason to a thousandth: finer than any probe. */
function shortened(reason: Reason): Reason {
  const cut = (value: number): number => Math.round(value * 1000) / 1000
  return {
    ...reason,
    ...(reason.value === undefined ? {} : { value: cut(reason.value) }),
    ...(reason.limit === undefined ? {} : { limit: cut(reason.limit) }),
  }
}
