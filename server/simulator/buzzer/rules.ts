/** Milliseconds on the buzzer's own clock, which only counts. */
type Ms = number

/** A buzzer sounds by itself after this long without a beat while a firing runs (wire format, `beat`), ms. */
export const silenceLimitMs = 8_000
/** How long a `beep` command sounds, ms. */
const testSoundMs = 2_000

/**
 * A buzzer with the condenser's outlet probe of its own knows, with nobody above it, what no cloths can hold: the service's warning of 55 °C
 * (instrument facts 8.3) and the 20 K that it adds while it knows nothing of the load. Delay and dead-band of instrument facts 6.3.
 */
export const ownLimit = { outletC: 75, deadBandK: 2, onDelayMs: 15_000 } as const

export type BuzzerInput = { at: Ms } & (
  | { kind: 'alert'; level: 'none' | 'notice' | 'warning' | 'urgent'; sound: number }
  | { kind: 'beat'; firing: boolean }
  | { kind: 'server'; online: boolean }
  | { kind: 'link'; up: boolean }
  /** Its own probe in the outlet, °C; null where that gives nothing. */
  | { kind: 'outlet'; celsius: number | null }
  | { kind: 'beep' }
  | { kind: 'tick' }
)

/** What the piezo plays: the alert's pattern 0 (silent) to 3 (urgent), the test sound, and apart from them "I am alone". */
export interface Sound {
  pattern: 0 | 1 | 2 | 3
  alone: boolean
  test: boolean
}

export interface BuzzerState {
  /** Kept in flash on a real node, so that a buzzer that restarts beside a burning kiln still knows. */
  firing: boolean
  lastBeatAt: Ms
  linkUp: boolean
  serverOnline: boolean
  pattern: 0 | 1 | 2 | 3
  testUntil: Ms
  /** Since when its own probe has stood over its own limit; null while it does not. What cannot be read changes nothing. */
  hotSince: Ms | null
}

export function startBuzzer(at: Ms, firing: boolean): BuzzerState {
  return { firing, lastBeatAt: at, linkUp: false, serverOnline: true, pattern: 0, testUntil: at, hotSince: null }
}

const patternOf = (sound: number): 0 | 1 | 2 | 3 => (sound <= 0 ? 0 : sound === 1 ? 1 : sound === 2 ? 2 : 3)

/** Pure: what a buzzer node does with what it hears, and with what it no longer hears. */
export function stepBuzzer(state: BuzzerState, input: BuzzerInput): BuzzerState {
  switch (input.kind) {
    case 'alert':
      return { ...state, pattern: input.level === 'none' ? 0 : patternOf(input.sound) }
    case 'beat':
      return { ...state, firing: input.firing, lastBeatAt: input.at, serverOnline: true }
    case 'server':
      return { ...state, serverOnline: input.online }
    case 'link':
      // a link that was lost counts as silence: a new one is trusted only once a beat came over it
      if (input.up || !state.linkUp) return { ...state, linkUp: input.up }
      return { ...state, linkUp: false, lastBeatAt: input.at - silenceLimitMs }
    case 'outlet':
      if (input.celsius === null) return state
      if (input.celsius >= ownLimit.outletC) return { ...state, hotSince: state.hotSince ?? input.at }
      return input.celsius < ownLimit.outletC - ownLimit.deadBandK ? { ...state, hotSince: null } : state
    case 'beep':
      return { ...state, testUntil: input.at + testSoundMs }
    case 'tick':
      return state
  }
}

/**
 * Fails towards noise: while a firing runs, silence of the service has to be re-earned. The own limit speaks whenever the service does not,
 * firing or none: while it does, the service knows better whether cloths are wet and whether anything is being collected.
 */
export function soundOf(state: BuzzerState, at: Ms): Sound {
  const deaf = !state.linkUp || !state.serverOnline || at - state.lastBeatAt >= silenceLimitMs
  const hot = deaf && state.hotSince !== null && at - state.hotSince >= ownLimit.onDelayMs
  return { pattern: hot && state.pattern < 2 ? 2 : state.pattern, alone: state.firing && deaf, test: at < state.testUntil }
}
