/** Milliseconds on the buzzer's own clock, which only counts. */
type Ms = number

/** A buzzer sounds by itself after this long without a beat while a firing runs (wire format, `beat`), ms. */
export const silenceLimitMs = 8_000
/** How long a `beep` command sounds, ms. */
const testSoundMs = 2_000

export type BuzzerInput = { at: Ms } & (
  | { kind: 'alert'; level: 'none' | 'notice' | 'warning' | 'urgent'; sound: number }
  | { kind: 'beat'; firing: boolean }
  | { kind: 'server'; online: boolean }
  | { kind: 'link'; up: boolean }
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
}

export function startBuzzer(at: Ms, firing: boolean): BuzzerState {
  return { firing, lastBeatAt: at, linkUp: false, serverOnline: true, pattern: 0, testUntil: at }
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
      // the time without a link counts as silence: a new link is trusted only once a beat came over it
      return { ...state, linkUp: input.up }
    case 'beep':
      return { ...state, testUntil: input.at + testSoundMs }
    case 'tick':
      return state
  }
}

/** Fails towards noise: while a firing runs, silence of the service has to be re-earned. */
export function soundOf(state: BuzzerState, at: Ms): Sound {
  const alone = state.firing && (!state.linkUp || !state.serverOnline || at - state.lastBeatAt >= silenceLimitMs)
  return { pattern: state.pattern, alone, test: at < state.testUntil }
}
