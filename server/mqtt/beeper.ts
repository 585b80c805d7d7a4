import type { Ms, NodeId } from '../contract/fold.ts'
import type { NodeView } from '../contract/live.ts'
import type { BeepView } from '../contract/setup.ts'
import type { Said } from './broker.ts'
import { sayCommand } from './said.ts'
import type { Where } from './said.ts'

/** A node that has no probes is there to be heard or seen; one that calls itself a buzzer may have probes beside. */
export function isBuzzer({ hardware, channels, samples }: NodeView): boolean {
  return /buzzer/i.test(hardware) || (hardware !== '' && channels.length === 0 && samples === 0)
}

/** Those that are in reach now. */
export function buzzersIn(nodes: readonly NodeView[]): NodeId[] {
  return nodes.filter((node) => isBuzzer(node) && (node.state === 'ready' || node.state === 'init')).map(({ node }) => node)
}

/** Asks buzzers to beep and keeps what they answer on `ack` (wire format, "Topics"); the newest asking counts. */
export class Beeper {
  private readonly where: Where
  private readonly publish: (said: Said) => void
  private readonly asked = new Map<string, BeepView>()
  private count = 0

  constructor(where: Where, publish: (said: Said) => void) {
    this.where = where
    this.publish = publish
  }

  beep(nodes: readonly NodeId[], now: Ms): void {
    this.asked.clear()
    for (const node of nodes) {
      const id = `b${now}-${++this.count}`
      this.asked.set(id, { node, askedAt: now, answer: 'waiting' })
      this.publish(sayCommand(this.where, node.slice(node.indexOf('/') + 1), id, 'beep'))
    }
  }

  /** Every message of the nodes passes here; what is no answer to a beep is let go by. */
  heard({ topic, payload }: { topic: string; payload: Uint8Array }): void {
    if (this.asked.size === 0 || !topic.endsWith('/ack')) return
    const { id, ok } = answerIn(payload)
    const asked = this.asked.get(id)
    const own = asked && topic === `${this.where.root}/1/${asked.node}/ack`
    if (own) this.asked.set(id, { ...asked, answer: ok ? 'done' : 'cannot' })
  }

  view(): BeepView[] {
    return [...this.asked.values()]
  }
}

function answerIn(payload: Uint8Array): { id: string; ok: boolean } {
  try {
    const said: unknown = JSON.parse(new TextDecoder().decode(payload))
    const { id, ok } = (typeof said === 'object' && said !== null ? said : {}) as Record<string, unknown>
    return { id: typeof id === 'string' ? id : '', ok: ok === true }
  } catch {
    return { id: '', ok: false }
  }
}
