import type { IntakeFold, KilnInput } from '../../server/domain/intake/types.ts'

interface PlainState {
  nodes: string[]
  seen: string[]
}

/** A stand-in for the intake fold where a test is about its driver: packs of plain records, already linear, duplicates by boot and seq. */
export const plainIntake: IntakeFold<PlainState> = {
  version: 1,
  start: () => ({ nodes: [], seen: [] }),
  step(state, message) {
    const [, , site, node, kind] = message.topic.split('/')
    const inputs: KilnInput[] = []
    const name = `${site}/${node}`
    if (!state.nodes.includes(name)) {
      state.nodes.push(name)
      inputs.push({ kind: 'node', node: name, is: 'up' })
    }
    if (kind !== 'readings' && kind !== 'backlog') return { state, inputs, refused: [], commands: [] }
    try {
      const pack = JSON.parse(new TextDecoder().decode(message.payload)) as { n: string; v: number; t?: number }[]
      const seq = pack.find((record) => record.n === 'seq')?.v
      const key = `${name} ${seq}`
      if (seq !== undefined && state.seen.includes(key)) return { state, inputs, refused: [], commands: [] }
      if (seq !== undefined) state.seen = [...state.seen.slice(-20), key]
      for (const { n, v, t } of pack) {
        if (n === 'seq' || n === 'boot' || n === 'up' || n.includes('/')) continue
        const at = t === undefined ? message.at : t > 1e8 ? Math.round(t * 1000) : message.at + Math.round(t * 1000)
        inputs.push({ kind: 'sample', channel: `${name}/${n}`, t: at, late: kind === 'backlog', quality: 'good', raw: v, value: v })
      }
      return { state, inputs, refused: [], commands: [] }
    } catch {
      return { state, inputs, refused: [{ node: name, reason: 'bad-json', record: null }], commands: [] }
    }
  },
  view: () => [],
  freeze: (state) => new TextEncoder().encode(JSON.stringify(state)),
  thaw: (bytes) => JSON.parse(new TextDecoder().decode(bytes)) as PlainState,
}
