import { patterns, type Pattern, type PatternName } from './patterns.ts'

/** Tones made in the page, and a voice where the device has one. A browser keeps silent until the page was touched once. */
export class Sounder {
  #audio: AudioContext | null = null
  #repeating: ReturnType<typeof setInterval> | undefined
  #sounding: PatternName | null = null
  /** True once a touch has let this page make sound. */
  unlocked = $state(false)

  /** Called from a touch. */
  readonly unlock = (): void => {
    if (typeof AudioContext === 'undefined') return
    this.#audio ??= new AudioContext()
    void this.#audio.resume().then(() => {
      this.unlocked = this.#audio?.state === 'running'
    })
  }

  /** Sounds once. */
  play(name: PatternName): void {
    const audio = this.#audio
    if (audio?.state !== 'running') return
    const pattern: Pattern = patterns[name]
    for (const tone of pattern.tones) this.#tone(audio, tone.at, tone.forS, tone.hz)
  }

  /** Keeps sounding until told otherwise; null ends it. */
  keep(name: PatternName | null): void {
    if (name === this.#sounding) return
    this.#sounding = name
    clearInterval(this.#repeating)
    if (name === null) return
    this.play(name)
    const { everyS }: Pattern = patterns[name]
    if (everyS !== null) this.#repeating = setInterval(() => this.play(name), everyS * 1000)
  }

  say(text: string, language: string): void {
    if (typeof speechSynthesis === 'undefined' || !this.unlocked) return
    const spoken = new SpeechSynthesisUtterance(text)
    spoken.lang = language
    spoken.rate = 0.9
    this.hush()
    speechSynthesis.speak(spoken)
  }

  /** Ends the voice in the middle of what it says, and drops what waits behind it. */
  hush(): void {
    if (typeof speechSynthesis !== 'undefined') speechSynthesis.cancel()
  }

  stop(): void {
    this.keep(null)
    void this.#audio?.close()
    this.#audio = null
  }

  #tone(audio: AudioContext, at: number, forS: number, hz: number): void {
    const start = audio.currentTime + 0.02 + at
    const oscillator = audio.createOscillator()
    const gain = audio.createGain()
    // a square tone has the harmonics that a small loudspeaker needs
    oscillator.type = 'square'
    oscillator.frequency.value = hz
    gain.gain.setValueAtTime(0, start)
    gain.gain.linearRampToValueAtTime(0.5, start + 0.01)
    gain.gain.setValueAtTime(0.5, start + forS - 0.02)
    gain.gain.linearRampToValueAtTime(0, start + forS)
    oscillator.connect(gain).connect(audio.destination)
    oscillator.start(start)
    oscillator.stop(start + forS)
  }
}
