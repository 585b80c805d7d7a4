import type { Action } from '../../contract/actions.ts'
import type { ChannelBirth, Reading, Row, Script } from './script.ts'

type Line = Record<string, unknown>

const isRecord = (x: unknown): x is Line => typeof x === 'object' && x !== null && !Array.isArray(x)

/** The nodes of a recording file, by `{site}/{node}`; throws one sentence when the text is no recording. */
export function scriptsOfRecording(text: string): Map<string, Script> {
  const lines = text
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line, i) => parse(line, i + 1))
  if (lines[0]?.['recording'] !== 1) throw new Error('this file is no recording: its first line has no "recording": 1')
  const light = lines.find((line) => line['action'] === 'light')
  const litMs = Date.parse(String((light ?? lines.find((line) => 'at' in line) ?? {})['at']))
  type Growing = Script & { epochs: Map<number, number> }
  const scripts = new Map<string, Growing>()
  const acts: Script['acts'] = []
  for (const line of lines.slice(1)) {
    const atMs = Date.parse(String(line['at']))
    if (typeof line['action'] === 'string') acts.push({ atS: (atMs - litMs) / 1000, act: actOf(line) })
    const [, , site, node, kind] = String(line['topic'] ?? '').split('/')
    if (!site || !node || node === 'server' || line['retained'] === true) continue
    const name = `${site}/${node}`
    const script: Growing = scripts.get(name) ?? { channels: [], clock: 'none', periodS: 5, rows: [], acts, epochs: new Map() }
    scripts.set(name, script)
    if (kind === 'info' && isRecord(line['payload'])) takeBirth(script, line['payload'])
    if (kind === 'readings' || kind === 'backlog') {
      const row = rowOfPack(line['payload'], `${name}/`, atMs, script.epochs)
      if (row) script.rows.push({ atS: (row.atMs - litMs) / 1000, readings: row.readings })
    }
  }
  for (const script of scripts.values()) script.rows.sort((a, b) => a.atS - b.atS)
  return scripts
}

function parse(line: string, number: number): Line {
  try {
    const value: unknown = JSON.parse(line)
    if (isRecord(value)) return value
  } catch {
    // told below, with the number of the line
  }
  throw new Error(`line ${number} of the recording is no JSON object`)
}

function actOf(line: Line): Action {
  const { at: _at, id: _id, doneAt: _doneAt, corrects: _corrects, ...act } = line
  return act as Action
}

function takeBirth(script: Script, birth: Line): void {
  if (Array.isArray(birth['channels']))
    script.channels = birth['channels'].filter((c): c is ChannelBirth => isRecord(c) && typeof c['n'] === 'string')
  if (birth['clock'] === 'ntp' || birth['clock'] === 'server' || birth['clock'] === 'none') script.clock = birth['clock']
  const period = script.channels[0]?.['period']
  if (typeof period === 'number' && period > 0) script.periodS = period
}

/** A pack as one row; its moment comes from `up`, so that what was sent late stands where it was measured. */
function rowOfPack(
  payload: unknown,
  base: string,
  atMs: number,
  epochs: Map<number, number>,
): { atMs: number; readings: Row['readings'] } | null {
  if (isRecord(payload)) {
    const readings = Object.entries(payload).filter((e): e is [string, number] => typeof e[1] === 'number')
    return { atMs, readings: readings.map(([n, v]) => ({ n, v })) }
  }
  if (!Array.isArray(payload)) return null
  const readings: Reading[] = []
  const identity: Record<string, number> = {}
  for (const record of payload) {
    if (!isRecord(record)) continue
    const n = String(record['n'] ?? '')
    const { u, v, vs } = record
    if (n === 'boot' || n === 'seq' || n === 'up') identity[n] = Number(v)
    else if (n !== '') {
      const name = n.startsWith(base) ? n.slice(base.length) : n
      readings.push({
        n: name,
        ...(typeof u === 'string' ? { u } : {}),
        ...(typeof v === 'number' ? { v } : {}),
        ...(typeof vs === 'string' ? { vs } : {}),
      })
    }
  }
  const { boot, up } = identity
  if (boot === undefined || up === undefined) return { atMs, readings }
  const epoch = Math.min(epochs.get(boot) ?? Infinity, atMs - up * 1000)
  epochs.set(boot, epoch)
  return { atMs: epoch + up * 1000, readings }
}
