import type { KilnConfig, Ms } from './contract/fold.ts'
import type { KilnView } from './contract/live.ts'
import type { RehearsalScene, RehearsalView } from './contract/setup.ts'
import type { AlarmCode } from './contract/vocabulary.ts'
import { defaultKilnConfig } from './contract/kiln-defaults.ts'
import { makeKilnFold } from './domain/firing/fold.ts'
import { intakeFold } from './domain/intake/fold.ts'
import { Driver } from './runtime/driver.ts'
import type { Effect } from './runtime/driver.ts'
import { actEntry, messageEntry } from './runtime/entry.ts'
import { mishaps, readingsAt } from './rehearsal-readings.ts'

/** The rules alone: what is rehearsed are alarms, and none of these hangs on the physical model. */
const folds = { intake: intakeFold, kiln: makeKilnFold<never>(null) }
const minuteMs = 60_000
const everyMs = 10_000
/** So much of the kiln's time is played before anybody else on this box gets a turn. */
const sliceMs = 10 * minuteMs
/** How long a rehearsal may cry before it ends by itself. */
const longestSoundMs = 3 * minuteMs
/** A buzzer sounds by itself after 8 s (wire format, `beat`); the beat comes every 3 s. */
const silenceMs = 16_000
const node = 'rehearsal'

export interface RehearsalSetup {
  scene: RehearsalScene
  kiln: string
  site: string
  root: string
  buzzers: number
  now: Ms
  /** Told whenever the picture changed. */
  onChange: () => void
}

/** A hidden firing of made-up readings, played through the house's own folds as fast as they go until its mishap is told. */
export class Rehearsal {
  private readonly setup: RehearsalSetup
  private readonly driver: Driver<ReturnType<typeof intakeFold.start>, ReturnType<typeof folds.kiln.start>>
  private readonly litAt: Ms
  private readonly config: KilnConfig
  private ends: NodeJS.Timeout | null = null
  private next: NodeJS.Immediate | null = null
  private seq = 1
  private picture: RehearsalView

  constructor(setup: RehearsalSetup) {
    this.setup = setup
    const { scene, buzzers, kiln, site, root } = setup
    const { expected, atMin } = mishaps[scene]
    this.picture = { scene, state: 'preparing', expected: [...expected], told: null, buzzers }
    this.litAt = Math.floor((setup.now - (atMin + 60) * minuteMs) / everyMs) * everyMs
    this.config = { ...defaultKilnConfig(kiln), charge: { massKg: 70, moisturePct: 25 } }
    this.driver = Driver.fresh(folds, { root, site, at: this.litAt - minuteMs, seq: 0, configs: [this.config], rolling: false })
  }

  start(): void {
    if (this.setup.scene === 'service') {
      this.become({ state: 'silent' })
      this.ends = setTimeout(() => this.end(), silenceMs)
      return
    }
    this.act(this.litAt - everyMs, 'arm')
    this.act(this.litAt, 'light')
    this.next = setImmediate(() => this.play(this.litAt))
  }

  end(): void {
    // each by its own kind: Node's count of immediates breaks when it is given anything else
    if (this.ends) clearTimeout(this.ends)
    if (this.next) clearImmediate(this.next)
    this.ends = this.next = null
    if (this.picture.state !== 'over') this.become({ state: 'over' })
  }

  view(): RehearsalView {
    return this.picture
  }

  /** What the buzzers are told instead of the kiln's own state; null while they are to hear that one. */
  kilnView(): KilnView | null {
    const session = this.picture.state === 'sounding' ? this.driver.state.sessions.get(this.config.kiln) : undefined
    return session ? folds.kiln.view(session.state, this.driver.state.at) : null
  }

  private play(from: Ms): void {
    const { atMin, withinMin } = mishaps[this.setup.scene]
    const mishapAt = this.litAt + atMin * minuteMs
    const last = mishapAt + withinMin * minuteMs
    for (let at = from; at < Math.min(from + sliceMs, last); at += everyMs) {
      const told = this.toldIn(this.read(at))
      if (told && at >= mishapAt) return this.sound({ ...told, afterS: Math.round((at - mishapAt) / 1000) })
    }
    if (from + sliceMs >= last) return this.end()
    this.next = setImmediate(() => this.play(from + sliceMs))
  }

  private sound(told: NonNullable<RehearsalView['told']>): void {
    this.ends = setTimeout(() => this.end(), longestSoundMs)
    this.become({ state: 'sounding', told })
  }

  private become(change: Partial<RehearsalView>): void {
    this.picture = { ...this.picture, ...change }
    this.setup.onChange()
  }

  private act(at: Ms, action: 'arm' | 'light'): void {
    const act = { id: `rehearsal-${action}`, at, doneAt: at, act: { action } }
    this.driver.drive(actEntry({ seq: this.seq++, at }, this.config.kiln, act))
  }

  private read(at: Ms): Effect[] {
    const { root, site, scene } = this.setup
    const minute = (at - this.litAt) / minuteMs
    const identity = [
      { n: 'boot', u: 'count', v: 1 },
      { n: 'seq', u: 'count', v: this.seq },
      { n: 'up', u: 's', v: (at - this.litAt) / 1000 + 60 },
    ]
    const pack = [...readingsAt(scene, minute), ...identity]
    const payload = new TextEncoder().encode(JSON.stringify([{ bn: `${site}/${node}/`, bu: 'Cel', ...pack[0] }, ...pack.slice(1)]))
    return this.driver.drive(
      messageEntry({ seq: this.seq++, at }, { topic: `${root}/1/${site}/${node}/readings`, payload, retained: false }),
    )
  }

  private toldIn(effects: readonly Effect[]): Omit<NonNullable<RehearsalView['told']>, 'afterS'> | null {
    const expected: readonly AlarmCode[] = this.picture.expected
    for (const effect of effects) {
      if (effect.kind !== 'output' || effect.output.kind !== 'alarm') continue
      const { alarm, state, priority } = effect.output
      if (state === 'unacknowledged' && expected.includes(alarm)) return { alarm, priority }
    }
    return null
  }
}
