import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { intakeFold } from '../../server/domain/intake/fold.ts'
import type { IntakeState } from '../../server/domain/intake/fold.ts'
import type { KilnInput, Message } from '../../server/domain/intake/types.ts'
import { parsePayload } from '../../server/domain/senml/payload.ts'
import { resolvePack } from '../../server/domain/senml/resolve.ts'

const encode = (value: unknown) => new TextEncoder().encode(JSON.stringify(value))
const start = Date.UTC(2026, 2, 1, 6)
const begin = () => intakeFold.start({ root: 'firing', site: 'yard' })

/** Anything that a sender could make of a record, mostly near to what it should be. */
const label = fc.constantFrom(
  'bn',
  'bt',
  'bu',
  'bv',
  'bs',
  'bver',
  'n',
  'u',
  'v',
  'vs',
  'vb',
  'vd',
  's',
  't',
  'ut',
  'x',
  'fancy_',
  '__proto__',
)
const scalar = fc.oneof(
  fc.constantFrom<unknown>(
    'yard/n1/',
    'outlet',
    'wall',
    'boot',
    'seq',
    'up',
    'Cel',
    'K',
    'mV',
    'fault:open',
    'fault:?',
    10,
    26,
    42,
    0,
    -1,
    17,
    1_772_344_800,
    268_435_455,
  ),
  fc.double(),
  fc.string(),
  fc.boolean(),
  fc.constant(null),
)
const record = fc.dictionary(label, scalar, { maxKeys: 6 })
const message = fc.record({
  kind: fc.constantFrom('readings', 'backlog', 'info', 'state', 'ack', 'cmd', 'nonsense'),
  retained: fc.boolean(),
  payload: fc.oneof(
    { weight: 5, arbitrary: fc.array(record, { maxLength: 6 }).map(encode) },
    { weight: 2, arbitrary: record.map(encode) },
    { weight: 2, arbitrary: fc.jsonValue().map(encode) },
    { weight: 1, arbitrary: fc.uint8Array({ maxLength: 60 }) },
    { weight: 1, arbitrary: fc.string().map((text) => new TextEncoder().encode(text)) },
  ),
})

describe('whatever comes in', () => {
  it('the payload door and the pack never throw', () => {
    fc.assert(
      fc.property(fc.oneof(fc.uint8Array(), fc.jsonValue().map(encode)), (bytes) => {
        const parsed = parsePayload(bytes)
        if (parsed.ok && Array.isArray(parsed.value)) resolvePack(parsed.value)
      }),
      { numRuns: 2000 },
    )
  })

  it('the fold never throws, tells only numbers and times that are numbers, and can be frozen after it', () => {
    fc.assert(
      fc.property(fc.array(message, { maxLength: 12 }), (messages) => {
        let state = begin()
        for (const [i, { kind, retained, payload }] of messages.entries()) {
          const at = start + i * 1000
          const result = intakeFold.step(state, { seq: i + 1, at, topic: `firing/1/yard/n1/${kind}`, payload, retained })
          state = result.state
          for (const input of result.inputs) {
            if (input.kind !== 'sample') continue
            expect(Number.isFinite(input.t) && input.t <= at).toBe(true)
            expect(input.value === null || Number.isFinite(input.value)).toBe(true)
            expect(input.quality.startsWith('fault:')).toBe(input.value === null)
          }
        }
        const frozen = intakeFold.freeze(state)
        expect(Buffer.compare(intakeFold.freeze(intakeFold.thaw(frozen)), frozen)).toBe(0)
      }),
      { numRuns: 1000 },
    )
  })

  it('a message that brings no input leaves everything but counters and remarks as it was', () => {
    const counters = (state: IntakeState) => {
      const copy = intakeFold.thaw(intakeFold.freeze(state))
      for (const node of copy.nodes.values())
        Object.assign(node, { refused: {}, remarks: [], duplicates: 0, conflicts: 0, bootConflicts: 0 })
      return copy
    }
    fc.assert(
      fc.property(fc.array(record, { maxLength: 6 }), (records) => {
        const state = begin()
        intakeFold.step(state, {
          seq: 1,
          at: start,
          topic: 'firing/1/yard/n1/readings',
          payload: encode([{ n: 'yard/n1/wall', u: 'Cel', v: 40 }]),
          retained: false,
        })
        const before = counters(state)
        const { inputs, refused } = intakeFold.step(state, {
          seq: 2,
          at: start + 1000,
          topic: 'firing/1/yard/n1/readings',
          payload: encode(records),
          retained: false,
        })
        fc.pre(inputs.length === 0 && refused.some(({ record: place }) => place === null))
        expect(counters(state)).toEqual(before)
      }),
      { numRuns: 500 },
    )
  })
})

/** A run of one node: packs in order, with an outage whose packs come later as a buffer. */
const run = fc
  .record({
    packs: fc.array(
      fc.record({
        outlet: fc.integer({ min: 320, max: 960 }),
        wall: fc.integer({ min: 160, max: 1600 }),
        fault: fc.integer({ min: 0, max: 20 }),
      }),
      {
        minLength: 1,
        maxLength: 40,
      },
    ),
    outageFrom: fc.nat(40),
    outageLength: fc.nat(15),
    absolute: fc.boolean(),
  })
  .map(({ packs, outageFrom, outageLength, absolute }) => {
    const made = packs.map(({ outlet, wall, fault }, i): Message => {
      const upS = 5 * (i + 1)
      const t = absolute ? (start + upS * 1000) / 1000 : 0
      const records = [
        { bn: 'yard/n1/', bu: 'Cel', n: 'outlet', v: outlet / 16, t },
        fault === 0 ? { n: 'wall', vs: 'fault:open', t } : { n: 'wall', v: wall / 4, t },
        { n: 'boot', u: 'count', v: 17 },
        { n: 'seq', u: 'count', v: i + 1 },
        { n: 'up', u: 's', v: upS },
      ]
      const buffered = i > 0 && i >= outageFrom && i < outageFrom + outageLength
      return {
        seq: 0,
        at: start + upS * 1000,
        topic: `firing/1/yard/n1/${buffered ? 'backlog' : 'readings'}`,
        payload: encode(records),
        retained: false,
      }
    })
    return { live: made.filter(({ topic }) => topic.endsWith('readings')), buffer: made.filter(({ topic }) => topic.endsWith('backlog')) }
  })

/** Plays messages with no delay; the buffer comes when all else is in. */
function play(messages: readonly Message[]): { inputs: KilnInput[]; state: IntakeState; refused: number } {
  let state = begin()
  const inputs: KilnInput[] = []
  let refused = 0
  for (const [i, message] of messages.entries()) {
    const result = intakeFold.step(state, { ...message, seq: i + 1 })
    state = result.state
    inputs.push(...result.inputs)
    refused += result.refused.length
  }
  return { inputs, state, refused }
}

const byText = (a: string, b: string) => (a < b ? -1 : a > b ? 1 : 0)
const placed = (inputs: readonly KilnInput[]) =>
  inputs.flatMap((input) => (input.kind === 'sample' ? [`${input.channel} ${input.t} ${input.quality} ${input.raw}`] : [])).sort(byText)
const unplaced = (inputs: readonly KilnInput[]) =>
  inputs.flatMap((input) => (input.kind === 'sample' ? [`${input.channel} ${input.quality} ${input.raw}`] : [])).sort(byText)

describe('at least once, in any order', () => {
  it('every pack twice, the second copy any while later, gives the same samples at the same times', () => {
    fc.assert(
      fc.property(run, fc.infiniteStream(fc.nat(20)), ({ live, buffer }, stream) => {
        const all = [...live, ...buffer.map((message) => ({ ...message, at: start + 400_000 }))]
        const copies = all.map((message, i) => ({ message, place: i + (stream.next().value ?? 0) }))
        let latest = start
        const doubled = all.flatMap((message, i) => [message, ...copies.filter(({ place }) => place === i).map(({ message }) => message)])
        const rest = copies.filter(({ place }) => place >= all.length).map(({ message }) => message)
        const monotonic = [...doubled, ...rest].map((message) => ({ ...message, at: (latest = Math.max(latest, message.at)) }))
        const twice = play(monotonic)
        expect(monotonic).toHaveLength(2 * all.length)
        expect(placed(twice.inputs)).toEqual(placed(play(all).inputs))
        expect(twice.refused).toBe(0)
        expect(intakeFold.view(twice.state)[0]).toMatchObject({ duplicates: 2 * all.length, conflicts: 0 })
      }),
      { numRuns: 300 },
    )
  })

  it('every pack twice and all of it shuffled gives the same samples', () => {
    fc.assert(
      fc.property(run, fc.infiniteStream(fc.nat()), ({ live, buffer }, stream) => {
        const shuffled = [...live, ...live, ...buffer, ...buffer]
          .map((message) => ({ message, order: stream.next().value ?? 0 }))
          .sort((a, b) => a.order - b.order)
          .map(({ message }, i) => ({ ...message, at: start + 400_000 + i }))
        const twice = play(shuffled)
        expect(unplaced(twice.inputs)).toEqual(unplaced(play([...live, ...buffer]).inputs))
        expect(twice.refused).toBe(0)
        expect(intakeFold.view(twice.state)[0]).toMatchObject({ duplicates: 2 * (live.length + buffer.length), conflicts: 0 })
      }),
      { numRuns: 300 },
    )
  })

  it('goes on after a checkpoint at any place as if there had been none', () => {
    fc.assert(
      fc.property(run, fc.nat(60), ({ live, buffer }, cut) => {
        const all = [...live, ...buffer.map((message) => ({ ...message, at: start + 400_000 }))]
        const whole = play(all)
        let state = play(all.slice(0, cut)).state
        const rest: KilnInput[] = []
        state = intakeFold.thaw(intakeFold.freeze(state))
        for (const [i, message] of all.slice(cut).entries()) {
          const result = intakeFold.step(state, { ...message, seq: cut + i + 1 })
          state = result.state
          rest.push(...result.inputs)
        }
        expect([...play(all.slice(0, cut)).inputs, ...rest]).toEqual(whole.inputs)
        expect(Buffer.compare(intakeFold.freeze(state), intakeFold.freeze(whole.state))).toBe(0)
      }),
      { numRuns: 300 },
    )
  })
})
