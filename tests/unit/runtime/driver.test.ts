import { describe, expect, test } from 'vitest'
import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import type { Action } from '../../../server/contract/actions.ts'
import type { Input, KilnConfig, Output } from '../../../server/contract/fold.ts'
import { kilnFold } from '../../../server/domain/firing/fold.ts'
import type { KilnFold } from '../../../server/domain/firing/types.ts'
import { Driver } from '../../../server/runtime/driver.ts'
import type { Effect } from '../../../server/runtime/driver.ts'
import { freezeSite, thawSite } from '../../../server/runtime/checkpoint.ts'
import { actEntry, configEntry, healthEntry, messageEntry } from '../../../server/runtime/entry.ts'
import { plainIntake } from '../../support/plain-intake.ts'

interface Told {
  config: KilnConfig
  inputs: (Input & { at: number })[]
  lit: boolean
}

/** A kiln fold that says every input back and remembers what it was told; a note "lit" makes it tell a phase. */
const recording: KilnFold<Told> = {
  version: 1,
  start: (config) => ({ config, inputs: [], lit: false }),
  step(state, input) {
    state.inputs.push(input)
    const outputs: Output[] = []
    if (input.kind === 'act' && input.act.action === 'note') {
      state.lit ||= input.act.text === 'lit'
      outputs.push({ cause: 0, n: 0, at: input.at, kind: 'phase', phase: 'kindling', because: [] })
      outputs.push({ cause: 0, n: 0, at: input.at, kind: 'phase', phase: 'drying', because: [] })
    }
    return { state, outputs }
  },
  view(state, at) {
    const view = kilnFold.view(kilnFold.start(state.config), at)
    return { ...view, firing: { ...view.firing, litAt: state.lit ? at : null } }
  },
  freeze: (state) => new TextEncoder().encode(JSON.stringify(state)),
  thaw: (bytes) => JSON.parse(new TextDecoder().decode(bytes)) as Told,
}
const folds = { intake: plainIntake, kiln: recording }
const hour = 3_600_000
const start = Date.UTC(2026, 2, 1, 7, 0, 0)

const fresh = (configs = [defaultKilnConfig()], at = start) =>
  Driver.fresh(folds, { root: 'firing', site: 'yard', at, seq: 0, configs, rolling: true })
const act = (seq: number, at: number, action: Action, kiln = 'kiln-1') =>
  actEntry({ seq, at }, kiln, { id: `a${seq}`, at, doneAt: at, act: action })
const reading = (seq: number, at: number, pack: object[], node = 'n1') =>
  messageEntry(
    { seq, at },
    { topic: `firing/1/yard/${node}/readings`, payload: new TextEncoder().encode(JSON.stringify(pack)), retained: false },
  )
const told = (driver: Driver<unknown, Told> | Driver<never, Told>, kiln = 'kiln-1') => driver.state.sessions.get(kiln)?.state.inputs ?? []
const kinds = (effects: Effect[]) => effects.map((effect) => effect.kind)

describe('the driver', () => {
  test('ticks the seconds before an entry and that of its own time, then gives the entry', () => {
    const driver = fresh()
    driver.drive(act(1, start + 2000, { action: 'refine' }))
    driver.drive(act(2, start + 3999, { action: 'refine' }))
    expect(told(driver).map((input) => [input.kind, input.at - start])).toEqual([
      ['tick', 1000],
      ['tick', 2000],
      ['act', 2000],
      ['tick', 3000],
      ['act', 3999],
    ])
  })

  test('numbers outputs by the entry before them, without a gap and never twice', () => {
    const driver = fresh()
    const note = (seq: number) => driver.drive(act(seq, start + seq * 1000, { action: 'note', text: '' }))
    const numbers = [...note(1), ...note(2)].flatMap((effect) => (effect.kind === 'output' ? [[effect.output.cause, effect.output.n]] : []))
    expect(numbers).toEqual([
      [1, 0],
      [1, 1],
      [2, 0],
      [2, 1],
    ])
  })

  test('a role goes from a channel that fell silent to one of its name that speaks, but not while somebody fires', () => {
    const roles = (lit: boolean) => {
      const driver = fresh()
      driver.drive(reading(1, start + 1, [{ n: 'wall', v: 41 }], 'hand'))
      driver.drive(reading(2, start + 30_000, [{ n: 'wall', v: 42 }], 'n1'))
      expect(driver.state.sessions.get('kiln-1')?.config.roles).toEqual({ 'yard/hand/wall': 'wall' })
      if (lit) driver.drive(act(3, start + 40_000, { action: 'light' }))
      driver.drive(reading(4, start + 200_000, [{ n: 'wall', v: 43 }], 'n1'))
      return driver.state.sessions.get('kiln-1')?.config.roles
    }
    expect(roles(false)).toEqual({ 'yard/n1/wall': 'wall' })
    expect(roles(true)).toEqual({ 'yard/hand/wall': 'wall' })
  })

  test('a channel named after a role takes it once; other channels wait for a role', () => {
    const driver = fresh()
    driver.drive(
      reading(1, start + 1, [
        { n: 'wall', v: 20 },
        { n: 'probe-7', v: 30 },
      ]),
    )
    driver.drive(reading(2, start + 2, [{ n: 'wall', v: 21 }], 'n2'))
    expect(driver.state.sessions.get('kiln-1')?.config.roles).toEqual({ 'yard/n1/wall': 'wall' })
    const samples = told(driver).flatMap((input) => (input.kind === 'sample' ? [input.channel] : []))
    expect(samples).toEqual(['yard/n1/wall'])
  })

  test('each kiln hears its own channels only, and all hear of the health of the service', () => {
    const upper = { ...defaultKilnConfig('upper'), roles: { 'yard/n1/wall': 'wall' } as const }
    const lower = { ...defaultKilnConfig('lower'), roles: { 'yard/n2/wall': 'wall' } as const }
    const driver = fresh([upper, lower])
    driver.drive(reading(1, start + 1, [{ n: 'wall', v: 20 }]))
    driver.drive(reading(2, start + 2, [{ n: 'wall', v: 30 }], 'n2'))
    driver.drive(healthEntry({ seq: 3, at: start + 3 }, { code: 'storage-failing', on: true }))
    driver.drive(act(4, start + 4, { action: 'refuel' }, 'lower'))
    expect(told(driver, 'upper').map((i) => i.kind)).toEqual(['node', 'sample', 'health'])
    expect(told(driver, 'lower').map((i) => i.kind)).toEqual(['node', 'sample', 'health', 'act'])
  })

  test('points of the curve are calibrated, a fault is a gap', () => {
    const config = {
      ...defaultKilnConfig(),
      roles: { 'yard/n1/wall': 'wall' } as const,
      calibration: { 'yard/n1/wall': { gain: 2, offset: 1 } },
    }
    const points = fresh([config])
      .drive(reading(1, start + 1, [{ n: 'wall', v: 20 }]))
      .flatMap((effect) => (effect.kind === 'point' ? [effect.point] : []))
    expect(points).toEqual([{ role: 'wall', t: start + 1, value: 41 }])
  })
})

describe('sessions', () => {
  test('begin anew at full hours while nobody fires, knowing what was known', () => {
    const driver = fresh()
    driver.drive(reading(1, start + 1, [{ n: 'wall', v: 20 }]))
    const before = driver.state.sessions.get('kiln-1')?.id
    driver.advance(start + hour)
    const session = driver.state.sessions.get('kiln-1')
    expect(session?.id).not.toBe(before)
    expect(session?.origin).toMatchObject({ seq: 1, at: start + hour })
    expect(told(driver).map((input) => input.kind)).toEqual(['node'])
    expect(session?.config.roles).toEqual({ 'yard/n1/wall': 'wall' })
  })

  test.each(['load', 'light', 'arm'] as const)('become a firing by %s and then last over full hours', (action) => {
    const driver = fresh()
    expect(kinds(driver.drive(act(1, start + 1, { action })))).toEqual(['opened'])
    const { id } = driver.state.sessions.get('kiln-1') ?? {}
    driver.advance(start + 5 * hour)
    expect(driver.state.sessions.get('kiln-1')?.id).toBe(id)
  })

  test('become a firing when the lighting is inferred', () => {
    expect(kinds(fresh().drive(act(1, start + 1, { action: 'note', text: '' })))).toEqual(['output', 'output'])
    expect(kinds(fresh().drive(act(1, start + 1, { action: 'note', text: 'lit' })))).toEqual(['output', 'opened', 'output'])
  })

  test('end with the unloading, and the next begins after it', () => {
    const driver = fresh()
    driver.drive(act(1, start + 1, { action: 'light' }))
    const effects = driver.drive(act(2, start + 2 * hour, { action: 'unload' }))
    expect(effects).toEqual([{ kind: 'closed', kiln: 'kiln-1', session: 'kiln-1-20260301T070000-0', at: start + 2 * hour, seq: 2 }])
    expect(driver.state.sessions.get('kiln-1')).toMatchObject({ openedAt: null, origin: { seq: 2, at: start + 2 * hour } })
  })

  test('end with the next loading after a trial opening', () => {
    const driver = fresh()
    driver.drive(act(1, start + 1, { action: 'light' }))
    driver.drive(act(2, start + 2, { action: 'open' }))
    expect(kinds(driver.drive(act(3, start + 3, { action: 'load' })))).toEqual(['closed', 'opened'])
  })

  test('two that begin after the same entry never share a number', () => {
    const known = fresh()
    known.drive(healthEntry({ seq: 1, at: start + 1 }, { code: 'storage-failing', on: true }))
    known.advance(start + hour - 1000)
    const session = known.state.sessions.get('kiln-1')
    if (session) Object.assign(session, { cause: 1, nextN: 5 })
    known.advance(start + hour)
    expect(known.state.sessions.get('kiln-1')).toMatchObject({ cause: 1, nextN: 5 })
  })

  test('after a long rest nobody counts the idle seconds, but a firing counts every one', () => {
    const idle = fresh()
    idle.advance(start + 1000 * hour + 2005)
    expect(told(idle).map((input) => input.at - start - 1000 * hour)).toEqual([1000, 2000])
    const firing = fresh()
    firing.drive(act(1, start + 1, { action: 'light' }))
    firing.advance(start + 10 * hour)
    expect(told(firing)).toHaveLength(10 * 3600 + 1)
  })

  test('a config entry of an unknown kiln makes the kiln', () => {
    const driver = fresh()
    driver.drive(configEntry({ seq: 1, at: start + 1 }, defaultKilnConfig('second')))
    expect([...driver.state.sessions.keys()]).toEqual(['kiln-1', 'second'])
  })
})

describe('checkpoints', () => {
  test('a thawed site goes on as if it had never stopped', () => {
    const one = fresh()
    one.drive(
      reading(1, start + 1, [
        { n: 'wall', v: 20 },
        { n: 'seq', v: 1 },
      ]),
    )
    one.drive(act(2, start + 2000, { action: 'light' }))
    const other = thawSite(folds, [freezeSite(folds, one.state)])
    if (!other) throw new Error('not thawed')
    const later = [
      act(3, start + 5000, { action: 'note', text: 'lit' }),
      reading(4, start + 6000, [
        { n: 'wall', v: 22 },
        { n: 'seq', v: 1 },
      ]),
    ]
    expect(later.flatMap((entry) => other.drive(entry))).toEqual(later.flatMap((entry) => one.drive(entry)))
    expect(freezeSite(folds, other.state)).toEqual(freezeSite(folds, one.state))
  })

  test('one of other folds is not read', () => {
    const one = fresh()
    const newer = { ...folds, kiln: { ...recording, version: 2 } }
    expect(thawSite(newer, [freezeSite(folds, one.state)])).toBeNull()
  })
})
