import type { Command } from '../../../../server/contract/live.ts'
import type { Call } from '../../../../server/contract/vocabulary.ts'
import { soundOf } from '../alarms/standing.ts'
import type { Choice } from '../choice/choice.svelte.ts'
import { coveredAfterS } from '../live/clock.svelte.ts'
import type { Session } from '../live/session.svelte.ts'
import type { Words } from '../../words/en.ts'
import type { PatternName } from './patterns.ts'
import type { Sounder } from './sounder.svelte.ts'

const callOf: Partial<Record<Command, Call>> = {
  'stop-feeding': 'stop-feeding',
  'start-collecting': 'start-collecting',
  'stop-collecting': 'stop-collecting',
  seal: 'seal',
  'trial-opening': 'open',
}

/** Says aloud what the screen says: alarms by their pattern until hushed, a new call once, the voice where there is one. */
export class Herald {
  readonly #session: Session
  readonly #speech: { words: Words }
  readonly #choice: Choice
  readonly #sounder: Sounder
  #lastCall: Call | null = null
  #lastSound: PatternName | null = null

  constructor(session: Session, speech: { words: Words }, choice: Choice, sounder: Sounder) {
    this.#session = session
    this.#speech = speech
    this.#choice = choice
    this.#sounder = sounder
  }

  /** Run by an effect. A demo may cry, but never as if a kiln were in trouble: it only plays each sound once. */
  sound(): void {
    const { live, clock, place } = this.#session
    const alarm = live.kiln ? soundOf(live.kiln.alarms) : null
    const wanted = live.ready && clock.silentS >= coveredAfterS ? 'no-data' : alarm
    if (wanted === 'no-data' && this.#lastSound !== 'no-data' && this.#choice.now.voice)
      this.#sounder.say(this.#speech.words.voice.noData, this.#choice.now.language)
    this.#lastSound = wanted
    if (place.demo) {
      if (wanted !== null && this.#sounder.unlocked) this.#sounder.play(wanted)
    } else this.#sounder.keep(this.#sounder.unlocked ? wanted : null)
  }

  speak(): void {
    const command = this.#session.live.kiln?.command.do
    const call = (command && callOf[command]) ?? null
    if (call === this.#lastCall) return
    this.#lastCall = call
    // a call that has passed is not read to its end: a demo at speed would lag behind its own screen
    this.#sounder.hush()
    if (call === null) return
    this.#sounder.play('call')
    if (this.#choice.now.voice) this.#sounder.say(this.#speech.words.voice.call[call], this.#choice.now.language)
  }
}
