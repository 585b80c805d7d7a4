import { addressesFor } from './addresses.ts'
import type { Act } from './contract/actions.ts'
import type { KilnId, Ms } from './contract/fold.ts'
import type { ClockWord, HeardWord, RehearsalScene, SetupAnswer } from './contract/setup.ts'
import type { SetupDoor } from './http/setup/door.ts'
import type { AppSite } from './instance.ts'
import { Beeper, buzzersIn } from './mqtt/beeper.ts'
import type { Incoming, Said } from './mqtt/broker.ts'
import { sayBeat } from './mqtt/said.ts'
import type { Where } from './mqtt/said.ts'
import type { Spoken } from './mqtt/voice.ts'
import { Rehearsal } from './rehearsal.ts'
import type { Store } from './storage/store.ts'

export interface DeskSetup {
  where: Where
  host: string
  site: AppSite
  store: Store
  publish: (said: Said) => void
  /** Called when buzzers should hear something else than a moment ago. */
  onVoice: () => void
}

/** The box's side of the first run: its clock confirmed, its buzzers tried, and mishaps rehearsed without fire. */
export class SetupDesk implements SetupDoor {
  private readonly setup: DeskSetup
  private readonly beeper: Beeper
  private mqttPort: number | null = null
  private clock: ClockWord | null = null
  private readonly words = new Map<HeardWord['what'], HeardWord>()
  private played: Rehearsal | null = null

  constructor(setup: DeskSetup) {
    this.setup = setup
    this.beeper = new Beeper(setup.where, setup.publish)
  }

  async start(): Promise<void> {
    const { store } = this.setup
    for (const { json } of await store.documents('clock')) this.clock = JSON.parse(json) as ClockWord
    for (const { json } of await store.documents('heard')) this.keep(JSON.parse(json) as HeardWord)
  }

  stop(): void {
    this.endRehearsal()
  }

  openedAt(mqttPort: number | null): void {
    this.mqttPort = mqttPort
  }

  box(): SetupAnswer['box'] {
    return { addresses: addressesFor(this.setup.host), mqttPort: this.mqttPort, ...this.setup.where }
  }

  clockWord(): ClockWord | null {
    return this.clock
  }

  async sayClock(right: boolean, by: string): Promise<void> {
    const word = { right, at: this.setup.site.now() }
    await this.setup.store.putDocument({ kind: 'clock', id: 'box', at: word.at, by, json: JSON.stringify(word) })
    this.clock = word
  }

  heard(): HeardWord[] {
    return [...this.words.values()]
  }

  async sayHeard(said: Omit<HeardWord, 'at'>, by: string): Promise<void> {
    const word = { ...said, at: this.setup.site.now() }
    await this.setup.store.putDocument({ kind: 'heard', id: word.what, at: word.at, by, json: JSON.stringify(word) })
    this.keep(word)
  }

  beep(): void {
    this.beeper.beep(this.buzzers(), this.setup.site.now())
  }

  beeps() {
    return this.beeper.view()
  }

  /** Every message of the nodes passes here too. */
  message(message: Incoming): void {
    this.beeper.heard(message)
  }

  /** The first half of a sound test asks the buzzers to beep; the second only says what was heard. */
  acted(act: Omit<Act, 'at'>): void {
    if (act.act.action === 'arm' && act.act.tablet === undefined && act.act.buzzer === undefined) this.beep()
  }

  rehearse(scene: RehearsalScene): 'started' | 'kiln-burns' {
    const { site, where, publish, onVoice } = this.setup
    if (site.firing()) return 'kiln-burns'
    this.endRehearsal()
    const kiln = site.kilns()[0] ?? ''
    const buzzers = this.buzzers().length
    // the last beat before the silence says that a firing runs: only then does a buzzer mind
    if (scene === 'service') publish(sayBeat(where, 0, true))
    this.played = new Rehearsal({ scene, kiln, ...where, buzzers, now: site.now(), onChange: onVoice })
    this.played.start()
    return 'started'
  }

  rehearsal() {
    return this.played?.view() ?? null
  }

  endRehearsal(): void {
    this.played?.end()
  }

  /** What buzzers hear: the kilns of the site, or for a while what is rehearsed. */
  spoken(): Spoken {
    const { site } = this.setup
    return {
      kilns: () => site.kilns(),
      kilnView: (kiln) => this.rehearsed(kiln) ?? site.kilnView(kiln),
      now: (): Ms => site.now(),
      firing: () => site.firing(),
      healthy: () => this.played?.view().state !== 'silent' && site.healthy(),
    }
  }

  private rehearsed(kiln: KilnId) {
    return kiln === this.setup.site.kilns()[0] ? (this.played?.kilnView() ?? null) : null
  }

  private buzzers() {
    return buzzersIn(this.setup.site.siteView().nodes)
  }

  private keep(word: HeardWord): void {
    this.words.set(word.what, word)
  }
}
