import { describe, expect, it } from 'vitest'
import { faultWords } from '../../../server/contract/vocabulary.ts'
import { sayAlert, sayBeat, sayCall, sayCommand, sayState, sayTime } from '../../../server/mqtt/said.ts'
import { soundOf, startBuzzer, stepBuzzer } from '../../../server/simulator/buzzer/rules.ts'
import { en } from '../../../web/src/words/en.ts'
import { throughTheDoor } from './door.ts'
import { answers, messages, page } from './examples.ts'

describe('every example in the notes, through the real decoder', () => {
  it('says on which topic it goes', () => {
    expect(messages.length).toBeGreaterThan(8)
    expect(messages.filter(({ topic }) => topic === null)).toEqual([])
  })

  it.each(messages.map((m, i) => [i, m.topic, m] as const))('%i on %s', (_i, topic, example) => {
    // a node is born before it speaks
    const birth = messages.find((m) => m.topic === 'firing/1/yard/n1/info')?.text ?? ''
    const said = [
      { topic: 'firing/1/yard/n1/info', text: birth },
      { topic: topic ?? '', text: example.text, ...(example.at === null ? {} : { at: example.at }) },
    ]
    const { refused } = throughTheDoor(said)
    expect([...new Set(refused.map(({ reason }) => reason))]).toEqual(example.refused === null ? [] : [example.refused])
  })

  it('in the order of the page makes the readings that the page speaks of', () => {
    const { samples } = throughTheDoor(
      messages
        .filter(({ topic, refused }) => topic !== null && refused === null)
        .map((m) => ({ ...m, topic: m.topic ?? '', at: m.at ?? Date.UTC(2026, 2, 1, 7, 30) })),
    )
    const of = (channel: string) => samples.filter((s) => s.channel === channel)
    expect(of('yard/n1/outlet').map(({ value, late }) => [value, late])).toEqual([
      [31.25, false],
      [30.75, true],
    ])
    // the straight line of the chip reads about 3 K low at 350 °C (instrument facts 2.1)
    expect(of('yard/n1/wall')[0]?.value).toBeGreaterThan(353)
    expect(of('yard/n1/wall')[0]?.value).toBeLessThan(356)
    expect(of('yard/n1/firebox')[0]).toMatchObject({ quality: 'fault:open', value: null })
    expect(of('yard/n2/smoke')[0]).toMatchObject({ value: 83.5, t: 1772350200_000 })
    expect(of('yard/try/wall')[0]?.value).toBe(352)
  })
})

describe('every example of what the service says', () => {
  it('is word for word what it does say, on that topic', () => {
    const where = { root: 'firing', site: 'yard' }
    const since = 1772350200_000
    const said = [
      sayCommand(where, 'n1', 'c1', 'rebirth'),
      sayTime(where, since + 125),
      sayBeat(where, 4711, true),
      sayAlert(where, 'urgent', 'condenser-hot', since, false, 88),
      sayState(where, 'online', since),
      sayCall(where, 'kiln-1', 'kiln-1-20260301T073000-12', 'start-collecting', since),
    ]
    const words = (topic: string | null, text: string): unknown => [topic, JSON.parse(text)]
    expect(answers.map(({ said: topic, text }) => words(topic, text))).toEqual(said.map(({ topic, payload }) => words(topic, payload)))
    expect(said.filter(({ qos, retain }) => qos === 1 && retain).map(({ topic }) => topic.split('/')[4])).toEqual([
      'alert',
      'state',
      'call',
    ])
    expect(said.filter(({ qos }) => qos === 0).map(({ topic }) => topic.split('/')[4])).toEqual(['time', 'beat'])
  })

  it('plays on the buzzer as the page tells: alone after 8 s without a beat, and only a beat ends that', () => {
    const link = (up: boolean, at: number) => ({ kind: 'link', up, at }) as const
    const beat = (at: number) => ({ kind: 'beat', firing: true, at }) as const
    let state = stepBuzzer(stepBuzzer(startBuzzer(0, false), link(true, 0)), beat(0))
    expect([7999, 8000].map((at) => soundOf(state, at).alone)).toEqual([false, true])
    state = stepBuzzer(stepBuzzer(state, link(false, 9000)), link(true, 9500))
    expect(soundOf(state, 9500).alone).toBe(true)
    expect(soundOf(stepBuzzer(state, beat(9600)), 9600).alone).toBe(false)
  })
})

describe('the fault table', () => {
  const rows = [...page('faults.md').matchAll(/^\| `([a-z-]+)` +\| ([^|]+) \|/gm)].map(([, word = '', sentence = '']) => [
    word,
    sentence.trim(),
  ])

  it('has every word of the wire, in its order', () => {
    expect(rows.map(([word]) => word)).toEqual([...faultWords])
  })

  it('says the same as the screen', () => {
    const table: Record<string, string> = en.faults
    expect(Object.fromEntries(rows)).toEqual(table)
  })
})

describe('calibration', () => {
  // instrument facts 3.3, worked example; 3.2, boiling table and rule
  it('computes as its example says', () => {
    const a = (96.65 - 0) / (98.1 - 1.2)
    const b = 0 - a * 1.2
    expect(page('calibration.md')).toContain(`a = ${a.toFixed(6)}, b = −${Math.abs(b).toFixed(6)}`)
    expect(page('calibration.md')).toContain((a * 50 + b).toFixed(3))
  })

  it('gives boiling points within 0.05 K of its own kitchen rule', () => {
    const table = /altitude m +\|(.*)\|\n.*\n.*boils at °C +\|(.*)\|/.exec(page('calibration.md'))
    const numbers = (row = '') => row.split('|').map(Number)
    const metres = numbers(table?.[1])
    expect(metres.length).toBe(6)
    numbers(table?.[2]).forEach((boils, i) => expect(Math.abs(boils - (100 - (metres[i] ?? NaN) / 300))).toBeLessThan(0.05))
  })
})
