import type { Ms, Output, Reason } from '../../contract/fold.ts'
import type { KilnState } from './state.ts'

type Numberless<O> = O extends Output ? Omit<O, 'cause' | 'n' | 'at'> : never
export type Said = Numberless<Output>

/** Collects what one step says and numbers it by its cause. */
export interface Emit {
  outputs: readonly Output[]
  say(at: Ms, said: Said): void
}

const nothing: readonly Output[] = []

export function emitter(state: KilnState): Emit {
  const outputs: Output[] = []
  return {
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
