import type { Ms, Output } from '../../contract/fold.ts'
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
      outputs.push({ cause: state.cause, n: state.n++, at, ...said })
    },
  }
}
