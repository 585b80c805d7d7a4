import { spawnSync } from 'node:child_process'

/** True where this user may make networks of its own (root; Debian package iproute2). */
export function mayMakeNetworks(): boolean {
  if (process.getuid?.() !== 0) return false
  const name = `may${process.pid}`
  const made = spawnSync('ip', ['netns', 'add', name]).status === 0
  if (made) spawnSync('ip', ['netns', 'delete', name])
  return made
}

function ip(...args: string[]): void {
  const { status, stderr } = spawnSync('ip', args, { encoding: 'utf8' })
  if (status !== 0) throw new Error(`ip ${args.join(' ')}: ${stderr}`)
}

/** Two networks that know nothing of the machine's own, one for the box and one for a node, with a cable between them that can be pulled. */
export class YardNet {
  /** Addresses for documentation (RFC 5737). */
  readonly boxAddress = '192.0.2.1'
  readonly #box = `box${process.pid}`
  readonly #node = `node${process.pid}`
  readonly #cable = `c${process.pid}`

  lay(): void {
    for (const name of [this.#box, this.#node]) {
      ip('netns', 'add', name)
      ip('-n', name, 'link', 'set', 'lo', 'up')
    }
    ip('link', 'add', `${this.#cable}b`, 'netns', this.#box, 'type', 'veth', 'peer', 'name', `${this.#cable}n`, 'netns', this.#node)
    ip('-n', this.#box, 'addr', 'add', `${this.boxAddress}/30`, 'dev', `${this.#cable}b`)
    ip('-n', this.#node, 'addr', 'add', '192.0.2.2/30', 'dev', `${this.#cable}n`)
    ip('-n', this.#box, 'link', 'set', `${this.#cable}b`, 'up')
    this.plug()
  }

  /** The node's end: neither side is told, as when the Wi-Fi of a yard goes. */
  pull(): void {
    ip('-n', this.#node, 'link', 'set', `${this.#cable}n`, 'down')
  }

  plug(): void {
    ip('-n', this.#node, 'link', 'set', `${this.#cable}n`, 'up')
  }

  inBox(): string[] {
    return ['ip', 'netns', 'exec', this.#box]
  }

  inNode(): string[] {
    return ['ip', 'netns', 'exec', this.#node]
  }

  remove(): void {
    for (const name of [this.#box, this.#node]) spawnSync('ip', ['netns', 'delete', name])
  }
}
