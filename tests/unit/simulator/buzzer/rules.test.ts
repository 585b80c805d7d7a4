import { describe, expect, it } from 'vitest'
import { type BuzzerInput, silenceLimitMs, soundOf, startBuzzer, stepBuzzer } from '../../../../server/simulator/buzzer/rules.ts'

// Source: wire format, "beat" and "alert"; reliability handbook 7.1 ("Fail towards noise", "Dead man").

const after = (firing: boolean, inputs: BuzzerInput[]) => inputs.reduce(stepBuzzer, startBuzzer(0, firing))

describe('a buzzer node', () => {
  it('plays the pattern of the alert and is quiet again when the alert is gone', () => {
    const up: BuzzerInput[] = [
      { at: 0, kind: 'link', up: true },
      { at: 1, kind: 'beat', firing: true },
    ]
    const warned = after(false, [...up, { at: 2, kind: 'alert', level: 'warning', sound: 2 }])
    expect(soundOf(warned, 3)).toEqual({ pattern: 2, alone: false, test: false })
    expect(soundOf(stepBuzzer(warned, { at: 4, kind: 'alert', level: 'none', sound: 2 }), 5).pattern).toBe(0)
  })

  it('sounds by itself 8 s after the last beat while a firing runs, and not before', () => {
    const heard = after(false, [
      { at: 0, kind: 'link', up: true },
      { at: 1000, kind: 'beat', firing: true },
    ])
    expect(soundOf(heard, 1000 + silenceLimitMs - 1).alone).toBe(false)
    expect(soundOf(heard, 1000 + silenceLimitMs).alone).toBe(true)
    expect(soundOf(stepBuzzer(heard, { at: 20_000, kind: 'beat', firing: true }), 20_001).alone).toBe(false)
  })

  it('stays quiet about silence when no firing runs', () => {
    const heard = after(true, [
      { at: 0, kind: 'link', up: true },
      { at: 1000, kind: 'beat', firing: false },
    ])
    expect(soundOf(heard, 100_000).alone).toBe(false)
  })

  it.each<[string, BuzzerInput]>([
    ['the link breaks', { at: 2000, kind: 'link', up: false }],
    ['the service says it goes offline', { at: 2000, kind: 'server', online: false }],
  ])('sounds at once when %s during a firing', (_when, input) => {
    const heard = after(false, [{ at: 0, kind: 'link', up: true }, { at: 1000, kind: 'beat', firing: true }, input])
    expect(soundOf(heard, 2001).alone).toBe(true)
  })

  it('that restarted during a firing does not trust a link before a beat came over it', () => {
    const linked = after(true, [{ at: 7000, kind: 'link', up: true }])
    expect(soundOf(linked, silenceLimitMs).alone).toBe(true)
  })

  it('keeps an urgent alert while it is alone, so that neither hides the other', () => {
    const state = after(true, [
      { at: 0, kind: 'link', up: true },
      { at: 1, kind: 'alert', level: 'urgent', sound: 3 },
    ])
    expect(soundOf(state, 60_000)).toEqual({ pattern: 3, alone: true, test: false })
  })

  // reliability 7.1, layer 1: a limit of its own for the one condition that harms, with no network
  describe('with a probe of its own in the outlet', () => {
    const hot = (celsius: number | null, at = 0): BuzzerInput => ({ at, kind: 'outlet', celsius })
    const pattern = (inputs: BuzzerInput[], at: number, firing = false) => soundOf(after(firing, inputs), at).pattern
    it('that hears nobody is told by it after a quarter of a minute at 75 °C, firing or none', () => {
      expect([14_999, 15_000].map((at) => pattern([hot(75)], at))).toEqual([0, 2])
      expect(soundOf(after(true, [hot(75)]), 15_000)).toEqual({ pattern: 2, alone: true, test: false })
      expect(pattern([hot(74.9)], 60_000)).toBe(0)
    })
    it('goes by the dead-band, and a probe that cannot be read changes nothing', () => {
      expect(pattern([hot(75), hot(73, 10_000)], 20_000)).toBe(2)
      expect(pattern([hot(75), hot(72.9, 10_000)], 60_000)).toBe(0)
      expect(pattern([hot(75), hot(null, 10_000)], 20_000)).toBe(2)
      expect(pattern([hot(75), hot(72, 5000), hot(80, 10_000)], 24_999)).toBe(0)
    })
    it('leaves it to the service while that beats, and hides nothing worse', () => {
      const beaten: BuzzerInput[] = [{ at: 0, kind: 'link', up: true }, { at: 1000, kind: 'beat', firing: false }, hot(90, 1000)]
      expect([8999, 16_000].map((at) => pattern(beaten, at))).toEqual([0, 2])
      expect(pattern([...beaten, { at: 16_000, kind: 'beat', firing: false }], 16_001)).toBe(0)
      expect(pattern([hot(90), { at: 1, kind: 'alert', level: 'urgent', sound: 3 }], 20_000)).toBe(3)
    })
  })

  it('beeps for two seconds when it is asked to prove its sound', () => {
    const asked = after(false, [{ at: 500, kind: 'beep' }])
    expect([soundOf(asked, 501).test, soundOf(asked, 2500).test]).toEqual([true, false])
  })
})
