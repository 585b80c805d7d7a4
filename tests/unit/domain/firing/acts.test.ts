import { describe, expect, it } from 'vitest'
import { callsOf, drum, firing, lightAt, lit, minutesOf, phasesOf, play, withoutSmoke } from './bench.ts'

const minute = 60_000

describe('the log', () => {
  it('takes an act once, however often it comes', () => {
    const once = firing(drum, [lit, [50, { action: 'swap-bottle', litres: 3 }, { id: 'b1' }]], -5, 60)
    const twice = firing(
      drum,
      [lit, [50, { action: 'swap-bottle', litres: 3 }, { id: 'b1' }], [55, { action: 'swap-bottle', litres: 3 }, { id: 'b1' }]],
      -5,
      60,
    )
    expect(play(twice).view.firing.bottle).toEqual(play(once).view.firing.bottle)
    expect(play(twice).view.firing.acts).toHaveLength(2)
  })

  it('dates back: what was done counts from when it was done', () => {
    const { view } = play(firing(drum, [lit, [50, { action: 'wet-condenser' }, { doneMin: 45 }]], -5, 55))
    expect(view.firing.lastWettedAt).toBe(lightAt + 45 * minute)
  })

  it('corrects by a later entry and erases nothing', () => {
    const acts = [
      lit,
      [300, { action: 'seal' }, { id: 's' }],
      [310, { action: 'note', text: 'not sealed' }, { corrects: 's' }],
    ] as Parameters<typeof firing>[1]
    const { view, outputs } = play(firing(drum, acts, -5, 320))
    expect(view.firing.sealedAt).toBeNull()
    expect(view.firing.acts).toHaveLength(3)
    const back = phasesOf(outputs)
    expect(back.slice(-2)).toEqual(['cooling', 'vinegar'])
  })

  it('begins a new firing with the next load after unloading', () => {
    const acts = [
      lit,
      [540, { action: 'seal' }],
      [600, { action: 'open' }],
      [610, { action: 'unload', charcoalKg: 14 }],
      [620, { action: 'load', massKg: 60 }],
    ] as Parameters<typeof firing>[1]
    const before = play(firing(drum, acts.slice(0, 4), -5, 615))
    expect(before.view.firing.firing).toBeNull()
    expect(before.view.firing.phase).toBe('idle')
    const after = play(firing(drum, acts, -5, 625))
    expect(after.view.firing.firing).toMatch(/^kiln-1-\d+$/)
    expect(after.view.firing.acts).toHaveLength(1)
    expect(after.view.command.do).toBe('light')
    expect(after.view.calls.every((c) => c.state === 'not-yet')).toBe(true)
  })
})

describe('lighting and sealing', () => {
  it('lighting may be read from the firebox', () => {
    const { view, outputs } = play(firing(drum, [], -10, 60))
    expect(view.firing.litInferred).toBe(true)
    expect(minutesOf(outputs, 'phase', () => true)[0]).toBeLessThan(15)
    expect(view.firing.firing).not.toBeNull()
  })
  it('sealing never is: no seal, no opening', () => {
    const { outputs } = play(firing(drum, [lit], -10, 1100))
    expect(phasesOf(outputs)).not.toContain('cooling')
    expect(callsOf(outputs).filter((c) => c.startsWith('open'))).toEqual([])
  })
})

describe('what the operator did', () => {
  it('ends a call as done, whether it was due or not', () => {
    const { outputs, view } = play(firing(drum, [lit, [60, { action: 'start-collecting' }], [250, { action: 'stop-collecting' }]], -5, 320))
    expect(callsOf(outputs)).toEqual(['start-collecting done', 'stop-collecting done'])
    expect(view.command.do).toBe('wait')
    expect(view.command.next?.call ?? 'seal').toBe('seal')
  })
  it('collecting shows as collecting until the stop', () => {
    const { view } = play(firing(withoutSmoke(drum), [lit, [60, { action: 'start-collecting' }]], -5, 100))
    expect(view.command.do).toBe('collect')
    expect(view.firing.collectingSince).toBe(lightAt + 60 * minute)
  })
})

describe('the trial opening', () => {
  const sealed: Parameters<typeof firing>[1] = [lit, [540, { action: 'seal' }]]
  it('stands from the call on, and while the small gap is watched', () => {
    const called = play(firing(drum, sealed, -14, 2300))
    const [due] = minutesOf(called.outputs, 'call', (o) => o.kind === 'call' && o.call === 'open' && o.state === 'due')
    expect(due).toBeGreaterThan(540 + 600)
    expect(called.view.command.do).toBe('trial-opening')
    expect(called.view.firing.phase).toBe('cold')
    const cracked = play(firing(drum, [...sealed, [2305, { action: 'crack' }]], -14, 2310))
    expect(cracked.view.command.do).toBe('trial-opening')
  })
  it('is never what is told to one who opens a hot kiln', () => {
    const { view, outputs } = play(firing(drum, [...sealed, [600, { action: 'crack' }]], -14, 640))
    expect(view.command.do).toBe('keep-shut')
    expect(view.firing.phase).toBe('cooling')
    expect(callsOf(outputs)).not.toContain('open due')
  })
  it('begins anew when the kiln was closed again', () => {
    const { view } = play(firing(drum, [...sealed, [600, { action: 'crack' }], [610, { action: 'reseal' }]], -14, 640))
    expect(view.firing.sealedAt).toBe(lightAt + 610 * minute)
    expect(view.calls.find((c) => c.call === 'open')?.state).toBe('not-yet')
  })
})
