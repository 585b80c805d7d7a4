import { intakeFold } from '../../../server/domain/intake/fold.ts'
import type { KilnInput } from '../../../server/domain/intake/types.ts'

export interface Said {
  topic: string
  text: string
  at?: number
}

/** The service's own decoder, in the order of arrival; five seconds apart where no time is given. */
export function throughTheDoor(said: readonly Said[]) {
  let state = intakeFold.start({ root: 'firing', site: 'yard' })
  const inputs: KilnInput[] = []
  const refused: { reason: string; index: number }[] = []
  const commands: string[] = []
  said.forEach(({ topic, text, at }, seq) => {
    const result = intakeFold.step(state, {
      seq,
      at: at ?? Date.UTC(2026, 2, 1, 7, 30, 5 * seq),
      topic,
      payload: new TextEncoder().encode(text),
      retained: false,
    })
    state = result.state
    inputs.push(...result.inputs)
    refused.push(...result.refused.map(({ reason }) => ({ reason, index: seq })))
    commands.push(...result.commands.map(({ why }) => why))
  })
  const samples = inputs.filter((input) => input.kind === 'sample')
  return { samples, refused, commands, nodes: intakeFold.view(state) }
}
