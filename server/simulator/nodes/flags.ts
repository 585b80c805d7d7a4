import { parseArgs } from 'node:util'
import type { Kind } from '../firing/plan.ts'
import { kinds } from '../firing/plan.ts'
import type { Fault } from './faults.ts'
import { faultKinds, faultsOf, secondsOf } from './faults.ts'

export interface Flags {
  broker: string
  root: string
  site: string
  node: string
  nodes: number
  speed: number
  firing: string | null
  seed: string
  kind: Kind | null
  fromS: number | null
  toS: number | null
  faults: Fault[]
  boot: number | null
}

export const usage = `Virtual sensor nodes that speak real MQTT, from a simulated kiln or from a recording.

  npm run simulate -- [--broker mqtt://127.0.0.1:1883] [--site yard] [--node n1] [--speed 60] [--seed 1 | --firing FILE]

  --broker URL     where to connect                                     mqtt://127.0.0.1:1883
  --root NAME      first level of the topics                            firing
  --site NAME      --node NAME   who the node is                        yard n1
  --nodes N        so many nodes with a kiln each, n1 n1-2 n1-3 ...     1
  --speed N        1 to 600; the firing runs faster, the clock is real  1
  --seed N         which simulated firing                               1
  --kind KIND      ${kinds.join(', ')}
  --firing FILE    plays the nodes of a recording (.jsonl, .jsonl.gz)
  --from TIME --to TIME   a part only, after lighting: 1.5h, =-10m      all, at most 48 h
  --boot N         first boot number                                    by chance
  --faults LIST    KIND@TIME[+DURATION][:CHANNEL], comma between; without a duration 10 m, without a channel wall

Faults:
${Object.entries(faultKinds)
  .map(([kind, does]) => `  ${kind.padEnd(15)} ${does}`)
  .join('\n')}

Prints a JSON line for each thing that happens, and what the person at the kiln would do now. Ends by itself.`

const names = /^[a-z][a-z0-9-]{0,31}$/

/** Reads the command line; throws one sentence. Null when help was asked for. */
export function readFlags(args: string[]): Flags | null {
  const { values } = parseArgs({
    args,
    options: {
      broker: { type: 'string', default: 'mqtt://127.0.0.1:1883' },
      root: { type: 'string', default: 'firing' },
      site: { type: 'string', default: 'yard' },
      node: { type: 'string', default: 'n1' },
      nodes: { type: 'string', default: '1' },
      speed: { type: 'string', default: '1' },
      seed: { type: 'string', default: '1' },
      kind: { type: 'string' },
      firing: { type: 'string' },
      from: { type: 'string' },
      to: { type: 'string' },
      boot: { type: 'string' },
      faults: { type: 'string', default: '' },
      help: { type: 'boolean', default: false },
    },
  })
  if (values.help) return null
  for (const flag of ['site', 'node'] as const) {
    if (!names.test(values[flag]))
      throw new Error(`--${flag} ${values[flag]}: a name is a to z, 0 to 9 and -, starts with a letter, at most 32 long`)
  }
  if (values.node === 'server') throw new Error('--node server: this name is the service itself')
  return {
    broker: brokerOf(values.broker),
    root: values.root,
    site: values.site,
    node: values.node,
    nodes: numberOf('nodes', values.nodes, 1, 50),
    speed: numberOf('speed', values.speed, 1, 600),
    firing: values.firing ?? null,
    seed: values.seed,
    kind: kindOf(values.kind),
    fromS: timeOf('from', values.from),
    toS: timeOf('to', values.to),
    boot: values.boot === undefined ? null : numberOf('boot', values.boot, 0, 4294967295),
    faults: faultsOf(values.faults),
  }
}

function kindOf(text: string | undefined): Kind | null {
  if (text === undefined) return null
  const known = kinds.find((kind) => kind === text)
  if (known === undefined) throw new Error(`--kind ${text}: choose one of ${kinds.join(', ')}`)
  return known
}

function brokerOf(url: string): string {
  if (!/^(mqtts?|wss?):\/\/\S+$/.test(url)) throw new Error(`--broker ${url}: write an address such as mqtt://127.0.0.1:1883`)
  return url
}

function numberOf(flag: string, text: string, least: number, most: number): number {
  const value = Number(text)
  if (text.trim() === '' || !(value >= least && value <= most)) throw new Error(`--${flag} ${text}: give a number from ${least} to ${most}`)
  return value
}

function timeOf(flag: string, text: string | undefined): number | null {
  if (text === undefined) return null
  const s = secondsOf(text)
  if (s === null) throw new Error(`--${flag} ${text}: write 20s, 90m or 1.5h after lighting`)
  return s
}
