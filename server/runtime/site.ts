import type { Act } from '../contract/actions.ts'
import type { KilnConfig, KilnId, Ms } from '../contract/fold.ts'
import type { KilnChange } from '../contract/learnt.ts'
import type { KilnView, SiteView } from '../contract/live.ts'
import type { ProbeView } from '../contract/setup.ts'
import type { HealthCode } from '../contract/vocabulary.ts'
import type { CurvePoint, Store } from '../storage/store.ts'
import { freezeSite } from './checkpoint.ts'
import type { Clock } from './clock.ts'
import type { Driver, Effect, Folds } from './driver.ts'
import { ProbeTrails } from './probe-trails.ts'
import { actEntry, configEntry, healthEntry, messageEntry } from './entry.ts'
import { Inbox } from './inbox.ts'
import { Learnt } from './learnt.ts'
import type { Log } from './log.ts'
import { originVersion } from './origin.ts'
import { recover } from './recover.ts'
import { Recorder } from './recorder.ts'
import { rolesAfter } from './roles.ts'
import type { Session } from './session.ts'
import { Shelf } from './shelf.ts'
import { Watch, type Page } from './watch.ts'

export interface SiteSetup<I, K> {
  folds: Folds<I, K>
  store: Store
  /** Makes the axis: never before the end of what is stored. */
  clock: (notBefore: Ms) => Clock
  root: string
  site: string
  configs: readonly KilnConfig[]
  demo: boolean
  log: Log
}

/** What was entered cannot be taken; `code` is of the registry of problems. */
export class ActProblem extends Error {
  readonly code: 'unknown-kiln' | 'unknown-act'
  constructor(code: ActProblem['code']) {
    super(code)
    this.name = 'ActProblem'
    this.code = code
  }
}

export type SiteListener = (effects: readonly Effect[]) => void

const secondMs = 1000
const checkpointEveryMs = 300_000
const shelfEveryMs = 60_000
const probeEveryMs = 5000
const healthyWithinMs = 3000
/** A fold that has not failed for so long counts as mended. */
const mendedAfterMs = 60_000

/** One site in action: what enters is stored, then folded, then told. The only owner of the folds' state. */
export class Site<I, K> {
  private readonly setup: SiteSetup<I, K>
  private readonly recorder: Recorder
  private readonly shelf: Shelf
  private readonly learnt: Learnt
  private readonly trails = new ProbeTrails()
  private readonly listeners = new Set<SiteListener>()
  private readonly taking = new Map<string, Promise<void>>()
  private readonly unstored = new Set<string>()
  private readonly failing = new Map<HealthCode, Ms>()
  private running: { driver: Driver<I, K>; clock: Clock; inbox: Inbox; watch: Watch } | null = null
  private cancelTick: () => void = () => {}
  private passedAt = 0
  private failedAt = 0

  constructor(setup: SiteSetup<I, K>) {
    this.setup = setup
    this.shelf = new Shelf(setup.store, { demo: setup.demo, foldVersion: originVersion(setup.folds) })
    this.learnt = new Learnt(setup.store)
    this.recorder = new Recorder(setup.store, this.shelf, setup.log)
  }

  async start(): Promise<void> {
    const { folds, store, configs } = this.setup
    const { driver, clock, last } = await recover(folds, store, this.setup, (recovering, effects) =>
      this.recorder.take(effects, (id) => sessionOf(recovering, id)),
    )
    for (const session of driver.state.sessions.values()) this.recorder.continue(session)
    driver.ear = (sample) => this.trails.hear(sample)
    const inbox = new Inbox(
      store,
      clock,
      {
        fold: (entry) => this.tell(() => driver.drive(entry)),
        tick: (at) => this.tick(at),
        storage: (on) => this.setHealth('storage-failing', on),
      },
      last,
    )
    this.running = { driver, clock, inbox, watch: new Watch(inbox.now()) }
    for (const input of driver.state.known.values()) {
      if (input.kind !== 'health') continue
      this.failing.set(input.code, this.now()) // failed before the stop; whether it still does shows itself anew
      this.setHealth(input.code, false)
    }
    await this.recorder.flush()
    for (const config of configs) await this.align(config)
    await this.recorder.flush()
    if (!this.setup.demo) await this.checkpoint()
    this.scheduleTick()
  }

  /** After this nothing is taken any more; what was told is written and the next start begins from here. */
  async stop(): Promise<void> {
    this.cancelTick()
    await this.recorder.flush()
    if (this.running) await this.checkpoint()
    this.running = null
    await this.setup.store.stop()
  }

  /** A message of a node; resolves after COMMIT and folding, rejects when it could not be stored. */
  receive(message: { topic: string; payload: Uint8Array; retained: boolean }): Promise<void> {
    return this.live().inbox.accept((stamp) => messageEntry(stamp, message))
  }

  /** Resolves after COMMIT; an id that was taken before is taken, and nothing happens again. @throws ActProblem, StoreProblem */
  act(kiln: KilnId, act: Omit<Act, 'at'>): Promise<void> {
    const { driver, inbox } = this.live()
    const { acts, sessions } = driver.state
    if (!sessions.has(kiln)) return Promise.reject(new ActProblem('unknown-kiln'))
    const before = this.taking.get(act.id)
    if (before) return before
    if (acts.has(act.id) && !this.unstored.has(act.id)) return Promise.resolve()
    if (act.corrects !== undefined && !acts.has(act.corrects)) return Promise.reject(new ActProblem('unknown-act'))
    const taken = inbox
      .accept((stamp) => actEntry(stamp, kiln, { ...act, at: stamp.at, doneAt: Math.min(stamp.at, Math.round(act.doneAt)) }))
      .then(
        () => void this.unstored.delete(act.id),
        (problem: unknown) => {
          this.unstored.add(act.id)
          throw problem
        },
      )
      .finally(() => this.taking.delete(act.id))
    this.taking.set(act.id, taken)
    return taken
  }

  /** New settings of a kiln, from now on. */
  configure(config: KilnConfig): Promise<void> {
    return this.live().inbox.accept((stamp) => configEntry(stamp, config))
  }

  /** The drum, its cover or its wall probe was changed: what earlier firings taught no longer counts. @throws ActProblem, StoreProblem */
  async forget(kiln: KilnId, what: KilnChange, by: string): Promise<void> {
    if (!this.session(kiln)) throw new ActProblem('unknown-kiln')
    await this.learnt.forget(kiln, what, this.now(), by)
    await this.takeAlong(kiln)
  }

  setHealth(code: HealthCode, on: boolean): void {
    if (on === this.failing.has(code)) return
    if (on) this.failing.set(code, this.now())
    else this.failing.delete(code)
    this.live()
      .inbox.accept((stamp) => healthEntry(stamp, { code, on }))
      .catch((problem: unknown) => this.setup.log.warn({ problem, code, on }, 'a change of health could not be stored'))
  }

  /** The page's own script answered a beat. */
  echo(page: Page, visible: boolean): void {
    this.live().watch.echo(page, this.now(), visible)
  }

  /** The page was closed in order; one that is cut off says nothing. */
  leave(page: Page): void {
    this.running?.watch.leave(page)
  }

  now(): Ms {
    return this.live().inbox.now()
  }

  clock(): Clock {
    return this.live().clock
  }

  listen(listener: SiteListener): () => void {
    this.listeners.add(listener)
    return () => void this.listeners.delete(listener)
  }

  /** True while the loop that evaluates the rules does so; the beat on MQTT means this. */
  healthy(): boolean {
    return performance.now() - this.passedAt < healthyWithinMs && !this.failing.has('service-failing')
  }

  firing(): boolean {
    return [...this.live().driver.state.sessions.values()].some((session) => session.openedAt !== null)
  }

  session(kiln: KilnId): Session<K> | null {
    return this.live().driver.state.sessions.get(kiln) ?? null
  }

  kilns(): KilnId[] {
    return [...this.live().driver.state.sessions.keys()]
  }

  /** Points of a kiln that nobody fires; they are in no store. */
  idleCurve(session: string): readonly CurvePoint[] {
    return this.recorder.idleCurve(session)
  }

  /** Every probe that was heard since the start, with a role or without. */
  probes(): ProbeView[] {
    return this.trails.probes()
  }

  kilnView(kiln: KilnId): KilnView | null {
    const session = this.session(kiln)
    if (!session) return null
    const view = this.setup.folds.kiln.view(session.state, this.live().driver.state.at)
    return { ...view, firing: { ...view.firing, firing: session.openedAt === null ? null : session.id } }
  }

  siteView(): Omit<SiteView, 'demo'> {
    const { state } = this.live().driver
    return {
      nodes: this.setup.folds.intake.view(state.intake),
      refused: state.refused,
      health: [...this.failing].map(([code, since]) => ({ code, since })),
    }
  }

  private live(): NonNullable<typeof this.running> {
    if (!this.running) throw new Error('the site is not running: start() comes first, and nothing after stop()')
    return this.running
  }

  private scheduleTick(): void {
    const { clock } = this.live()
    const next = (Math.floor(clock.now() / secondMs) + 1) * secondMs
    this.cancelTick = clock.at(next, () => {
      this.live().watch.look(this.now())
      this.live().inbox.tick()
      this.scheduleTick()
    })
  }

  private tick(at: Ms): void {
    const { driver, watch, clock } = this.live()
    const before = driver.state.at
    this.tell(() => driver.advance(at))
    const passed = (everyMs: number) => Math.floor(driver.state.at / everyMs) > Math.floor(before / everyMs)
    if (this.failing.has('storage-failing') && passed(probeEveryMs)) this.probe()
    // the demo runs faster than anybody could answer
    this.setHealth('nobody-watching', !this.setup.demo && this.firing() && watch.unwatched())
    if (at - this.failedAt > mendedAfterMs) this.setHealth('service-failing', false)
    if (!this.firing()) clock.catchUp()
    this.setHealth('clock-suspect', !clock.sure())
    void this.recorder.flush()
    if (passed(shelfEveryMs)) void this.tidy(driver, at)
    if (passed(checkpointEveryMs) && !this.setup.demo) void this.checkpoint()
  }

  private async tidy(driver: Driver<I, K>, at: Ms): Promise<void> {
    this.recorder.keepOnly(new Set([...driver.state.sessions.values()].map((session) => session.id)))
    try {
      for (const id of this.recorder.firings()) await this.shelf.renew(id, at, null)
    } catch (problem) {
      this.setup.log.warn({ problem }, 'the shelf of firings could not be brought up to date')
    }
  }

  private probe(): void {
    this.live()
      .inbox.accept((stamp) => healthEntry(stamp, { code: 'storage-failing', on: true }))
      .catch(() => {}) // still failing; the alarm stands
  }

  private async checkpoint(): Promise<void> {
    const frozen = freezeSite(this.setup.folds, this.live().driver.state)
    try {
      await this.setup.store.saveCheckpoint(frozen)
    } catch (problem) {
      this.setup.log.warn({ problem }, 'a checkpoint could not be stored; the next start takes longer')
    }
  }

  /** Settings of a kiln that were changed while the service was off. */
  private async align(config: KilnConfig): Promise<void> {
    const current = this.session(config.kiln)?.config
    const prior = await this.learnt.prior(config.kiln)
    const wanted = { ...config, roles: rolesAfter(current?.roles ?? {}, config.roles), ...(prior === undefined ? {} : { prior }) }
    if (!current || JSON.stringify(sorted(current)) !== JSON.stringify(sorted(wanted))) await this.configure(wanted)
  }

  /** What the firings of this kiln taught, from the next lighting on. */
  private async takeAlong(kiln: KilnId): Promise<void> {
    const prior = await this.learnt.prior(kiln)
    const current = this.session(kiln)?.config
    if (!current || JSON.stringify(current.prior) === JSON.stringify(prior)) return
    const { prior: _before, ...config } = current
    await this.configure({ ...config, ...(prior === undefined ? {} : { prior }) })
  }

  private async learn(kiln: KilnId): Promise<void> {
    try {
      await this.recorder.flush()
      await this.takeAlong(kiln)
    } catch (problem) {
      this.setup.log.warn({ problem, kiln }, 'what a firing taught could not be taken along; it is at the next start')
    }
  }

  private tell(run: () => Effect[]): void {
    const { driver, inbox } = this.live()
    const effects = run()
    this.passedAt = performance.now()
    this.recorder.take(effects, (id) => sessionOf(driver, id))
    for (const effect of effects) {
      if (effect.kind === 'output' && effect.output.kind === 'lesson') void this.learn(effect.kiln)
      if (effect.kind !== 'failed') continue
      this.setup.log.error({ problem: effect.problem, seq: effect.seq }, 'a fold failed')
      this.failedAt = inbox.now()
      this.setHealth('service-failing', true)
    }
    for (const listener of this.listeners) listener(effects)
  }
}

function sessionOf<K>(driver: Driver<unknown, K> | Driver<never, K>, id: string): Session<K> | null {
  return [...driver.state.sessions.values()].find((session) => session.id === id) ?? null
}

function sorted(config: KilnConfig): unknown {
  return { ...Object.fromEntries(Object.entries(config).sort()), roles: Object.entries(config.roles).sort() }
}
