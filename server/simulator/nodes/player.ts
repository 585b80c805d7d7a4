import type { Script } from './script.ts'
import type { VirtualNode } from './virtual-node.ts'

export interface PlaySetup {
  nodes: { node: VirtualNode; script: Script }[]
  speed: number
  /** Seconds after lighting. */
  fromS: number
  toS: number
  now: () => number
  tell: (event: Record<string, unknown>) => void
}

/** Lets every node measure when its rows are due; ends at `toS` or when `stop` is called. */
export class Player {
  private readonly setup: PlaySetup
  private timer: NodeJS.Timeout | null = null
  private readonly at: number[]
  private actAt = 0
  private done: () => void = () => {}

  constructor(setup: PlaySetup) {
    this.setup = setup
    this.at = setup.nodes.map(({ script }) => script.rows.findIndex((row) => row.atS >= setup.fromS))
  }

  run(): Promise<void> {
    const startMs = this.setup.now()
    return new Promise((resolve) => {
      this.done = resolve
      this.turn(startMs)
    })
  }

  stop(): void {
    if (this.timer) clearTimeout(this.timer)
    this.timer = null
    this.done()
  }

  private turn(startMs: number): void {
    const { nodes, speed, fromS, toS, now, tell } = this.setup
    const firingS = fromS + ((now() - startMs) / 1000) * speed
    let nextS = Infinity
    nodes.forEach(({ node, script }, k) => {
      for (let row = script.rows[this.at[k]!]; row && row.atS <= firingS && row.atS <= toS; row = script.rows[++this.at[k]!])
        node.measure(row)
      const next = this.at[k]! < 0 ? undefined : script.rows[this.at[k]!]
      if (next && next.atS <= toS) nextS = Math.min(nextS, next.atS)
    })
    const acts = nodes[0]?.script.acts ?? []
    for (let entry = acts[this.actAt]; entry && entry.atS <= firingS; entry = acts[++this.actAt]) {
      if (entry.atS >= fromS) tell({ event: 'act', atS: Math.round(entry.atS), ...entry.act })
    }
    if (nextS === Infinity) return this.stop()
    this.timer = setTimeout(() => this.turn(startMs), Math.max(1, ((nextS - firingS) / speed) * 1000))
  }
}
