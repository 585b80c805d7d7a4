import { expect, test } from 'vitest'
import type { Act, Action } from '../../../../../server/contract/actions.ts'
import type { Output } from '../../../../../server/contract/fold.ts'
import { defaultKilnConfig } from '../../../../../server/contract/kiln-defaults.ts'
import type { Curve } from '../../../../../server/contract/live.ts'
import type { WholeFiring } from '../../../../../web/src/lib/api/api.ts'
import { alarmLines, blindSpans, callLines, chargeOf, glassesOf, litAtOf, topOf } from '../../../../../web/src/views/shelf/account.ts'
import { calmed, linePath, strokes, zeroOf } from '../../../../../web/src/views/shelf/align.ts'
import { partOf } from '../../../../../web/src/views/shelf/parts.ts'
import { resultOf } from '../../../../../web/src/views/shelf/result.ts'

const min = 60_000
const act = (id: string, doneAt: number, one: Action, corrects?: string): Act => ({
  id,
  at: doneAt + min,
  doneAt,
  act: one,
  ...(corrects === undefined ? {} : { corrects }),
})
type Told<K extends Output['kind']> = Omit<Extract<Output, { kind: K }>, 'cause' | 'n' | 'because'>
const call = (told: Told<'call'>): Output => ({ ...told, cause: told.at, n: 0, because: [] })
const alarm = (told: Told<'alarm'>): Output => ({ ...told, cause: told.at, n: 0, because: [] })

test('a call given, taken back, given again and done 12 minutes later', () => {
  const outputs = [
    call({ kind: 'call', at: 10 * min, call: 'seal', state: 'due' }),
    call({ kind: 'call', at: 15 * min, call: 'seal', state: 'withdrawn' }),
    call({ kind: 'call', at: 30 * min, call: 'seal', state: 'due' }),
  ]
  const [line] = callLines(outputs, [act('a', 42 * min, { action: 'seal' })])
  expect(line).toMatchObject({ call: 'seal', givenAt: 30 * min, doneAt: 42 * min, takenBackAt: null })
})

test('what was done without a call, and a trial opening as the answer to open', () => {
  const lines = callLines(
    [call({ kind: 'call', at: 5, call: 'open', state: 'due' })],
    [act('a', 1, { action: 'start-collecting' }), act('b', 9, { action: 'crack' })],
  )
  expect(lines.map(({ call: name, givenAt, doneAt }) => [name, givenAt, doneAt])).toEqual([
    ['start-collecting', null, 1],
    ['open', 5, 9],
  ])
})

test('an entry that was taken back is none', () => {
  const acts = [act('a', 1, { action: 'seal' }), act('b', 2, { action: 'note', text: '' }, 'a')]
  expect(callLines([], acts)).toEqual([])
})

test('an alarm from its coming to its end, hushed between, and one that came again', () => {
  const state = (at: number, one: Told<'alarm'>['state']) =>
    alarm({ kind: 'alarm', at, alarm: 'fire-dying', state: one, priority: 'warning' })
  const lines = alarmLines([state(1, 'unacknowledged'), state(2, 'acknowledged'), state(3, 'normal'), state(7, 'unacknowledged')])
  expect(lines.map(({ from, hushedAt, to }) => [from, hushedAt, to])).toEqual([
    [1, 2, 3],
    [7, null, null],
  ])
})

test('blind time is a broken line, of the probes only', () => {
  const t = [0, 1, 2, 3, 4].map((n) => n * min)
  const curve: Pick<Curve, 't' | 'series'> = {
    t,
    series: [
      { key: 'wall', values: [20, null, null, 30, 31] },
      { key: 'smoke-estimated', values: [1, null, null, null, 2] },
      { key: 'outlet', values: [null, 20, 21, 22, null] },
    ],
  }
  expect(blindSpans(curve)).toEqual([{ of: 'wall', from: 0, to: 3 * min }])
  expect([topOf(curve, 'smoke', 'wall'), topOf(curve, 'co')]).toEqual([31, null])
})

test('a probe that never came back was blind to the end; one that was never heard is not told', () => {
  const t = [0, 1, 2, 3, 4].map((n) => n * min)
  const lost: Pick<Curve, 't' | 'series'> = {
    t,
    series: [
      { key: 'wall', values: [20, 21, null, null, null] },
      { key: 'outlet', values: [20, 21, 22, 23, 24] },
      { key: 'smoke', values: [null, null, null, null, null] },
    ],
  }
  expect(blindSpans(lost)).toEqual([{ of: 'wall', from: min, to: 4 * min }])
})

const firing = (acts: Act[]): WholeFiring => ({
  id: 'f',
  kiln: 'kiln-1',
  kilnName: 'Demo',
  title: '',
  startedAt: 0,
  endedAt: 600 * min,
  demo: true,
  phases: [{ phase: 'kindling', from: 7 * min, to: null }],
  spark: { t: [], wall: [], smoke: [] },
  config: { ...defaultKilnConfig(), charge: { massKg: 60, moisturePct: 30 } },
  outputs: [],
  acts,
})
const bare: Curve = { from: 0, to: 600 * min, t: [], series: [], marks: [], ribbon: [] }

test('lit by the log, else by kindling; glasses in order; the charge as it was loaded', () => {
  expect(litAtOf(firing([]))).toBe(7 * min)
  expect(zeroOf(firing([act('a', 3 * min, { action: 'light' })]), 'lighting')).toBe(3 * min)
  expect(zeroOf(firing([]), 'tar')).toBeNull()
  const glasses = [act('b', 9, { action: 'glass', number: 2, drip: 'dark' }), act('a', 5, { action: 'glass', number: 1, photo: true })]
  expect(glassesOf(glasses).map(({ number, drip, photo }) => [number, drip, photo])).toEqual([
    [1, undefined, 'a'],
    [2, 'dark', null],
  ])
  // its time put right: the photograph keeps the name of the first entry
  const later = { ...act('c', 7, { action: 'glass', number: 1, photo: true }), corrects: 'a' }
  expect(glassesOf([...glasses, later])[0]).toMatchObject({ at: 7, photo: 'a' })
  expect(chargeOf(firing([act('l', 0, { action: 'load', massKg: 72 })]))).toMatchObject({ massKg: 72, moisturePct: 30 })
})

// Practical Action, Charcoal production: 10 kg from 100 kg at 20 % water is 10 % of the wood as loaded and 12.5 % of the oven-dry wood
test('the yields of the published example, and a later weighing that counts before the log', () => {
  const example = firing([
    act('l', 0, { action: 'load', massKg: 100, moisturePct: 20 }),
    act('u', 500 * min, { action: 'unload', charcoalKg: 9 }),
  ])
  const result = resultOf(example, bare, [{ charcoalKg: 10 }])
  expect(result.charcoalPct?.asLoaded).toBeCloseTo(10, 9)
  expect(result.charcoalPct?.dry).toBeCloseTo(12.5, 9)
  expect(resultOf(example, bare, []).charcoalPct?.asLoaded).toBeCloseTo(9, 9)
  expect(result).toMatchObject({ dryKg: 80, crudeL: null, verdict: { crude: null } })
})

test('six lines differ in dash and weight together', () => {
  expect(new Set(strokes.map(({ width, dash }) => `${String(width)} ${dash}`)).size).toBe(6)
})

test('a path leaves gaps open', () => {
  expect(
    linePath(
      [0, 1, 2, 3],
      [5, null, 6, 7],
      (at) => at,
      (value) => value,
    ),
  ).toBe('M0.0 5.0M2.0 6.0L3.0 7.0')
})

test('a calmed line keeps its means and its gaps', () => {
  expect(calmed([0, 1, 2, 3, 4, 5], [1, 3, null, 5, 7, 9], 2)).toEqual({ t: [0.5, 2, 3, 4.5], values: [2, null, 5, 8] })
})

test('addresses of the shelf', () => {
  expect(partOf(null)).toEqual({ is: 'list' })
  expect(partOf('kiln-1-20260301T073000-5')).toEqual({ is: 'firing', id: 'kiln-1-20260301T073000-5' })
  expect(partOf('compare~a~b~b')).toEqual({ is: 'compare', ids: ['a', 'b'] })
  expect(partOf('report~a')).toEqual({ is: 'report', id: 'a' })
  expect(partOf('take-in')).toEqual({ is: 'take-in' })
})
