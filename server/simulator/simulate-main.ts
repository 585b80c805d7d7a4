import { readFileSync } from 'node:fs'
import { gunzipSync } from 'node:zlib'
import { makeFiring } from './firing/world.ts'
import type { Flags } from './nodes/flags.ts'
import { readFlags, usage } from './nodes/flags.ts'
import { Player } from './nodes/player.ts'
import { scriptsOfRecording } from './nodes/recording-script.ts'
import type { Script } from './nodes/script.ts'
import { VirtualNode } from './nodes/virtual-node.ts'
import { scriptOfWorld } from './nodes/world-script.ts'

const longestS = 48 * 3600
const patienceMs = 20_000

function leave(problem: unknown): never {
  const sentence = problem instanceof Error ? problem.message : String(problem)
  console.error(sentence.split('\n')[0])
  process.exit(2)
}

const tell = (event: Record<string, unknown>) => console.log(JSON.stringify({ at: new Date().toISOString(), ...event }))

/** Name of every node and what it has to say. */
function scriptsOf(flags: Flags): Map<string, Script> {
  if (flags.firing === null) {
    const named = Array.from({ length: flags.nodes }, (_, i): [string, Script] => [
      i === 0 ? flags.node : `${flags.node}-${i + 1}`,
      scriptOfWorld(
        makeFiring(`world-${i === 0 ? flags.seed : `${flags.seed}-${i + 1}`}`, flags.kind === null ? {} : { kind: flags.kind }),
      ),
    ])
    return new Map(named)
  }
  const bytes = readFileSync(flags.firing)
  const text = (bytes[0] === 0x1f && bytes[1] === 0x8b ? gunzipSync(bytes) : bytes).toString('utf8')
  const found = [...scriptsOfRecording(text).values()].filter((script) => script.rows.length > 0)
  if (found.length === 0) throw new Error(`${flags.firing} holds no readings of any node`)
  return new Map(found.map((script, i) => [i === 0 ? flags.node : `${flags.node}-${i + 1}`, script]))
}

/** A node measures from its start on, but a run that nobody can hear is a mistake in the address. */
async function reached(nodes: { node: VirtualNode }[], broker: string): Promise<void> {
  const untilMs = Date.now() + patienceMs
  while (!nodes.every(({ node }) => node.heard)) {
    if (Date.now() > untilMs) throw new Error(`no broker answers at ${broker}`)
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
}

async function simulate(flags: Flags): Promise<void> {
  const scripts = scriptsOf(flags)
  const { broker, root, site, speed, faults } = flags
  const boot = flags.boot ?? Math.floor(Math.random() * 4294967296)
  const nodes = [...scripts].map(([name, script]) => ({
    script,
    node: new VirtualNode({ broker, root, site, node: name, script, faults, speed, boot, now: Date.now, tell }),
  }))
  const first = Math.min(...nodes.map(({ script }) => script.rows[0]?.atS ?? 0))
  const last = Math.max(...nodes.map(({ script }) => script.rows.at(-1)?.atS ?? 0))
  const fromS = flags.fromS ?? first
  const toS = Math.min(flags.toS ?? last, fromS + longestS)
  const player = new Player({ nodes, speed, fromS, toS, now: Date.now, tell })
  for (const { node } of nodes) node.start()
  await reached(nodes, broker)
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => player.stop())
  await player.run()
  for (const { node } of nodes) await node.stop()
  tell({ event: 'end', counts: nodes.map(({ node }) => node.counts) })
}

try {
  const flags = readFlags(process.argv.slice(2))
  if (flags === null) console.log(usage)
  else await simulate(flags)
} catch (problem) {
  leave(problem)
}
process.exit(0)
