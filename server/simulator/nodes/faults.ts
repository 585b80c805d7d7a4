import type { Reading } from './script.ts'

/** What can go wrong on demand, with what it does; printed by --help. */
export const faultKinds = {
  'probe-open': 'a channel says fault:open',
  'probe-short': 'a channel says fault:short-gnd',
  'probe-range': 'a channel says fault:range',
  'probe-bus': 'a channel says fault:bus',
  'probe-silent': 'a channel is left out of the packs',
  'probe-stuck': 'a channel repeats its last number',
  'probe-swapped': 'two channels change places (give two: wall/firebox)',
  spike: 'one reading of a channel is 250 K too high',
  'node-lost': 'the connection breaks without goodbye; what is measured meanwhile is lost',
  backlog: 'the connection breaks; what is measured meanwhile is kept and sent afterwards',
  reboot: 'the node starts anew: new boot number, seq and up from zero',
  duplicate: 'packs are sent twice',
  conflict: 'packs use an identity again with other values',
  'clock-wrong': 'a node with a clock stamps three hours ahead',
  retained: 'live packs carry the retain flag',
  'bad-json': 'a pack is cut in the middle',
} as const
export type FaultKind = keyof typeof faultKinds

export interface Fault {
  kind: FaultKind
  /** Seconds after lighting. */
  fromS: number
  toS: number
  channels: string[]
}

const units: Record<string, number> = { s: 1, m: 60, h: 3600 }
const defaultS = 600

/** Seconds of `90m`, `1.5h`, `20s`; null when it is none of these. */
export function secondsOf(text: string): number | null {
  const match = /^(-?\d+(?:\.\d+)?)([smh])$/.exec(text)
  return match ? Number(match[1]) * (units[match[2] ?? 's'] ?? 1) : null
}

/** Reads `probe-open@3h+10m:wall,reboot@4h`; throws one sentence that names the bad part. */
export function faultsOf(text: string): Fault[] {
  return text
    .split(',')
    .filter((part) => part !== '')
    .map((part) => {
      const match = /^([a-z-]+)@([^+:]+)(?:\+([^:]+))?(?::(.+))?$/.exec(part)
      const kind = match?.[1]
      if (!match || !kind || !(kind in faultKinds))
        throw new Error(`"${part}" is no fault: write KIND@TIME[+DURATION][:CHANNEL], kinds are in --help`)
      const fromS = secondsOf(match[2] ?? '')
      const forS = match[3] === undefined ? (kind === 'spike' || kind === 'reboot' ? 0 : defaultS) : secondsOf(match[3])
      if (fromS === null || forS === null) throw new Error(`"${part}" has no good time: write 20s, 90m or 1.5h after lighting`)
      return { kind: kind as FaultKind, fromS, toS: fromS + forS, channels: (match[4] ?? 'wall').split('/') }
    })
}

const words: Partial<Record<FaultKind, string>> = {
  'probe-open': 'fault:open',
  'probe-short': 'fault:short-gnd',
  'probe-range': 'fault:range',
  'probe-bus': 'fault:bus',
}

/** What a row becomes under the probe faults that hold at its moment. */
export function spoil(
  readings: readonly Reading[],
  atS: number,
  stepS: number,
  faults: readonly Fault[],
  last: ReadonlyMap<string, number>,
): Reading[] {
  let now = [...readings]
  for (const { kind, fromS, toS, channels } of faults) {
    const [first, second] = channels
    const holds = atS >= fromS && (atS < toS || (toS === fromS && atS < fromS + stepS))
    if (!holds || first === undefined) continue
    const word = words[kind]
    if (word) now = now.filter(({ n }) => n !== `${first}/cj`).map((r) => (r.n === first ? { n: first, vs: word } : r))
    if (kind === 'probe-silent') now = now.filter(({ n }) => n !== first && n !== `${first}/cj`)
    if (kind === 'probe-stuck') now = now.map((r) => (r.n === first ? { n: first, v: last.get(first) ?? r.v ?? 0 } : r))
    if (kind === 'spike') now = now.map((r) => (r.n === first && r.v !== undefined ? { ...r, v: r.v + 250 } : r))
    if (kind === 'probe-swapped') now = now.map((r) => ({ ...r, n: swapped(r.n, first, second ?? 'firebox') }))
  }
  return now
}

function swapped(n: string, a: string, b: string): string {
  const [head = n, ...rest] = n.split('/')
  const other = head === a ? b : head === b ? a : head
  return [other, ...rest].join('/')
}
