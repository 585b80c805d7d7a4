import { kilnFold } from '../../server/domain/firing/fold.ts'
import { intakeFold } from '../../server/domain/intake/fold.ts'
import { parsePayload } from '../../server/domain/senml/payload.ts'
import { resolvePack } from '../../server/domain/senml/resolve.ts'
import { Gate } from '../../server/mqtt/gate/gate.ts'
import { gateLimits } from '../../server/mqtt/gate/limits.ts'
import { lookAt } from '../../server/recordings/in/look.ts'
import { play } from '../../server/recordings/play.ts'
import { readRecording, RecordingProblem } from '../../server/recordings/read.ts'
import { checkSettings } from '../../server/settings/file.ts'
import { migrated } from '../../server/settings/migrations.ts'
import { SettingsError } from '../../server/settings/problems.ts'
import { createMemoryStore } from '../../server/storage/memory.ts'
import type { Dice } from './mutate.ts'
import { csvSeeds, jsonSeeds, packetSeeds, recordingSeeds, settingsSeeds } from './seeds.ts'

/** One way in: what it is fed and what must hold whatever came. */
export interface FuzzDoor {
  name: string
  seeds: readonly Buffer[]
  /** @throws when the promise of the decoder is broken; a refusal is none */
  check(bytes: Buffer, dice: Dice): Promise<void> | void
}

function demand(holds: boolean, what: string): asserts holds {
  if (!holds) throw new Error(what)
}

const payload: FuzzDoor = {
  name: 'payload and SenML pack',
  seeds: jsonSeeds,
  check(bytes) {
    const parsed = parsePayload(bytes)
    if (!parsed.ok || !Array.isArray(parsed.value)) return
    const pack = resolvePack(parsed.value)
    if (!pack.ok) return
    for (const { timeS, value } of pack.records) {
      demand(Number.isFinite(timeS), 'a time that is none')
      demand(value === null || Number.isFinite(value), 'a value that is none')
    }
  },
}

const kinds = ['readings', 'backlog', 'info', 'state', 'ack', 'cmd']
const begin = Date.UTC(2026, 2, 1, 6)

/** Keeps its state over many messages, as a house does. */
function intake(): FuzzDoor {
  let state = intakeFold.start({ root: 'firing', site: 'yard' })
  let seq = 0
  return {
    name: 'intake fold (packs, short form, birth, state)',
    seeds: jsonSeeds,
    check(bytes, dice) {
      if (++seq % 500 === 0) state = intakeFold.start({ root: 'firing', site: 'yard' })
      const at = begin + seq * 1000
      const topic = `firing/1/yard/n${1 + dice.below(3)}/${dice.of(kinds)}`
      const result = intakeFold.step(state, { seq, at, topic, payload: bytes, retained: dice.below(4) === 0 })
      state = result.state
      for (const input of result.inputs) {
        if (input.kind !== 'sample') continue
        demand(Number.isFinite(input.t) && input.t <= at, `a sample at ${input.t}, told at ${at}`)
        demand(input.value === null || Number.isFinite(input.value), `a sample of ${String(input.value)}`)
      }
      if (seq % 50 !== 0) return
      const frozen = intakeFold.freeze(state)
      demand(Buffer.compare(intakeFold.freeze(intakeFold.thaw(frozen)), frozen) === 0, 'a checkpoint that reads back as another')
    },
  }
}

const gate: FuzzDoor = {
  name: 'MQTT gate, whole and in pieces',
  seeds: packetSeeds,
  check(bytes, dice) {
    const passes = (pieces: readonly Buffer[]) => {
      const one = new Gate(gateLimits)
      const through: Buffer[] = []
      for (const piece of pieces) {
        // the gate may blank a bit of a packet in place
        const taken = one.take(Buffer.from(piece))
        if ('fault' in taken) return `${Buffer.concat(through).toString('hex')} ${taken.fault}`
        through.push(taken.passed)
      }
      return `${Buffer.concat(through).toString('hex')} ${one.holding ? 'holding' : 'done'}`
    }
    const pieces: Buffer[] = []
    for (let at = 0; at < bytes.length;) {
      const size = 1 + dice.below(dice.below(3) === 0 ? 3 : 60)
      pieces.push(bytes.subarray(at, at + size))
      at += size
    }
    const [whole, cut] = [passes([bytes]), passes(pieces)]
    // what came before a fault is let through only when it came in an earlier piece
    const verdictOf = (text: string) => text.slice(text.indexOf(' '))
    demand(verdictOf(whole) === verdictOf(cut), `whole${verdictOf(whole)}, in pieces${verdictOf(cut)}`)
    demand(/(holding|done)$/.test(whole) ? whole === cut : true, 'other bytes pass when they come in pieces')
  },
}

const folds = { intake: intakeFold, kiln: kilnFold }

function recording(): FuzzDoor {
  let count = 0
  return {
    name: 'recordings (read, look, and some played)',
    seeds: recordingSeeds,
    async check(bytes) {
      let read = null
      try {
        read = readRecording(bytes)
      } catch (problem) {
        demand(problem instanceof RecordingProblem, String(problem))
      }
      const { file, preview } = await lookAt(createMemoryStore(), bytes, 'x.jsonl', null)
      demand((file === null) === preview.problems.length > 0, 'a file without a problem, or a problem with a file')
      if (read === null || count++ % 8 !== 0) return
      for (const told of play(folds, read)) demand(Number.isFinite(Date.parse(told.at)), `told at ${told.at}`)
    },
  }
}

const csv: FuzzDoor = {
  name: 'CSV logs',
  seeds: csvSeeds,
  async check(bytes) {
    const { file, preview } = await lookAt(createMemoryStore(), bytes, 'log.csv', null)
    demand((file === null) === preview.problems.length > 0, 'a file without a problem, or a problem with a file')
    if (file === null) return
    demand(preview.from !== null && preview.to !== null && preview.from <= preview.to, 'a span that is none')
    // what a log was made into must be a recording that this house reads
    readRecording(Buffer.from(file.text))
  },
}

const settings: FuzzDoor = {
  name: 'settings',
  seeds: settingsSeeds,
  check(bytes) {
    let value: unknown
    try {
      value = JSON.parse(bytes.toString())
    } catch {
      return
    }
    try {
      const plain = typeof value === 'object' && value !== null && !Array.isArray(value) ? migrated(value as Record<string, unknown>) : null
      checkSettings('fuzz', plain === null ? value : plain.settings)
    } catch (problem) {
      demand(problem instanceof SettingsError, String(problem))
    }
  },
}

/** The decoders that need no running program. */
export const pureDoors = (): FuzzDoor[] => [payload, intake(), gate, recording(), csv, settings]
