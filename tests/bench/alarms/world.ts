import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Action } from '../../../server/contract/actions.ts'
import type { Input, KilnConfig } from '../../../server/contract/fold.ts'
import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import { channelNames } from '../../../server/simulator/firing/sampled.ts'

/** From and to, ms after lighting. */
export type Span = [number, number]
export const families = ['condenserDry', 'fireDying', 'airLeak'] as const
export type Family = (typeof families)[number]

/** What really happened in one firing. Times in ms after lighting. */
export interface Happened {
  name: string
  kind: string
  litMs: number
  sealedMs: number
  incidents: Record<Family | 'condenserDryish', Span[]>
}

/** One simulated firing as the kiln's fold hears it. */
export interface World extends Happened {
  config: KilnConfig
  inputs: Input[]
}

interface GridFile {
  fromS: number
  stepS: number
  rows: number
  litMs: number
  acts: { atS: number; act: Action }[]
  record: { massKg: number; moisturePct: number; pieceMm: number } | null
  plan: { hands: { letRunFromShare: number | null } }
}

interface TruthFile {
  kind: string
  lit: string
  sealed: string
  incidents: Record<string, [string, string][]>
}

export function worldNames(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => name.endsWith('.grid.json'))
    .map((name) => name.slice(0, -'.grid.json'.length))
    .sort()
}

/** @param litMs null where the truth file's own lighting counts */
export function happenedIn(folder: string, name: string, litMs: number | null): Happened {
  const truth = JSON.parse(readFileSync(join(folder, `${name}.truth.json`), 'utf8')) as TruthFile
  const lit = litMs ?? Date.parse(truth.lit)
  const after = (time: string): number => Date.parse(time) - lit
  const spans = (key: string): Span[] => (truth.incidents[key] ?? []).map(([from, to]) => [after(from), after(to)])
  return {
    name,
    kind: truth.kind,
    litMs: lit,
    sealedMs: after(truth.sealed),
    incidents: {
      condenserDry: spans('condenserDry'),
      condenserDryish: spans('condenserDryish'),
      fireDying: spans('fireDying'),
      airLeak: spans('airLeak'),
    },
  }
}

/** Reads what `npm run worlds -- FOLDER --as grid` wrote. */
export function readWorld(folder: string, name: string): World {
  const about = JSON.parse(readFileSync(join(folder, `${name}.grid.json`), 'utf8')) as GridFile
  return {
    ...happenedIn(folder, name, about.litMs),
    config: {
      ...defaultKilnConfig(),
      way: about.plan.hands.letRunFromShare === null ? 'kept' : 'let-run',
      ...(about.record === null ? {} : { charge: about.record }),
    },
    inputs: inputsOf(about, columnsOf(join(folder, `${name}.f32`))),
  }
}

function columnsOf(file: string): Float32Array {
  const bytes = readFileSync(file)
  return new Float32Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength))
}

/** A row in which no probe says anything never came; one probe alone without a number has a fault. */
function inputsOf(about: GridFile, columns: Float32Array): Input[] {
  const { rows, fromS, stepS, litMs } = about
  const fitted = channelNames
    .map((name, k) => ({ name, values: columns.subarray(k * rows, (k + 1) * rows) }))
    .filter(({ values }) => !values.every(Number.isNaN))
  const inputs: Input[] = []
  let seq = 0
  const startMs = litMs + fromS * 1000 - 1000
  for (const { name } of fitted)
    inputs.push({ seq: ++seq, at: startMs, kind: 'channel', channel: `yard/n1/${name}`, periodS: stepS, lsb: 0.25 })
  let next = 0
  for (let row = 0; row < rows; row++) {
    const t = litMs + (fromS + row * stepS) * 1000
    for (let act = about.acts[next]; act !== undefined && litMs + act.atS * 1000 <= t; act = about.acts[++next])
      inputs.push({ seq: ++seq, at: t, kind: 'act', id: `a${seq}`, doneAt: litMs + act.atS * 1000, act: act.act })
    seq++
    inputs.push({ seq, at: t, kind: 'tick' })
    if (fitted.every(({ values }) => Number.isNaN(values[row]))) continue
    for (const { name, values } of fitted) {
      const read = values[row] ?? NaN
      const value = Number.isNaN(read) ? null : read
      const quality = value === null ? 'fault:open' : 'good'
      inputs.push({ seq, at: t + 200, kind: 'sample', channel: `yard/n1/${name}`, t, late: false, quality, raw: value, value })
    }
  }
  return inputs
}
