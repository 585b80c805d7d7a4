import type { Act, ActionName } from '../contract/actions.ts'
import type { ActId, Input, KilnConfig, KilnId, Ms, NodeId, Output } from '../contract/fold.ts'
import type { HealthCode, Role } from '../contract/vocabulary.ts'
import type { KilnFold } from '../domain/firing/types.ts'
import type { IntakeFold, KilnInput, Refusal } from '../domain/intake/types.ts'
import type { CurvePoint, JournalEntry } from '../storage/store.ts'
import { documentOf } from './entry.ts'
import { freezeOrigin, thawOrigin } from './origin.ts'
import { claim, roleAt, roleByName, silentHolder } from './roles.ts'
import { makeSession, remember, rememberAct } from './session.ts'
import type { Known, Origin, Session } from './session.ts'
import { lets } from './throttle.ts'

/** The two folds of the house, as every driver of them needs them. */
export interface Folds<I, K> {
  intake: IntakeFold<I>
  kiln: KilnFold<K>
}

/** Everything that is remembered of a site between two entries of its journal. Changed in place. */
export interface SiteState<I, K> {
  root: string
  site: string
  intake: I
  /** The last entry that is in it. */
  seq: number
  /** The last tick that is in it: a whole second. */
  at: Ms
  sessions: Map<KilnId, Session<K>>
  known: Known
  acts: Set<ActId>
  refused: Record<string, number>
  /** Sessions start anew at full hours while nobody fires: so live, never in the replay of a file. */
  rolling: boolean
}

/** What came of one entry or tick, in order. */
export type Effect =
  | { kind: 'output'; kiln: KilnId; session: string; output: Output }
  | { kind: 'point'; kiln: KilnId; session: string; point: CurvePoint }
  | { kind: 'opened' | 'closed'; kiln: KilnId; session: string; at: Ms; seq: number }
  | { kind: 'refused'; entry: JournalEntry; refusal: Refusal }
  | { kind: 'command'; node: NodeId; do: 'rebirth'; why: string }
  /** A fold threw, which is a defect of ours; it goes on with the next entry, live and in every replay alike. */
  | { kind: 'failed'; seq: number; problem: unknown }

type Numberless<T> = T extends Input ? Omit<T, 'seq' | 'at'> : never

const secondMs = 1000
const hourMs = 3_600_000
/** A channel that a fresh session has not heard for so long is silent (wire format 7: lost after a minute), ms. */
const silentMs = 120_000

const wholeSecond = (at: Ms): Ms => Math.floor(at / secondMs) * secondMs

/**
 * The one driver of both folds: live, recovery and replay differ only in where entries come from.
 * Seconds tick between the entries, never at a second that an earlier entry has passed and never after the last.
 */
export class Driver<I, K> {
  readonly state: SiteState<I, K>
  /** Hears every sample as the intake understood it, whether or not a kiln has its channel. */
  ear: ((sample: Extract<KilnInput, { kind: 'sample' }>) => void) | null = null
  private readonly folds: Folds<I, K>
  private effects: Effect[] = []

  constructor(folds: Folds<I, K>, state: SiteState<I, K>) {
    this.folds = folds
    this.state = state
  }

  /** A new site, or a file without a beginning of its own: fresh folds from `at` on. */
  static fresh<I, K>(
    folds: Folds<I, K>,
    setup: { root: string; site: string; at: Ms; seq: number; configs: readonly KilnConfig[]; rolling: boolean },
  ): Driver<I, K> {
    const driver = new Driver<I, K>(folds, {
      root: setup.root,
      site: setup.site,
      intake: folds.intake.start({ root: setup.root, site: setup.site }),
      seq: setup.seq,
      at: wholeSecond(setup.at),
      sessions: new Map(),
      known: new Map(),
      acts: new Set(),
      refused: {},
      rolling: setup.rolling,
    })
    for (const config of setup.configs) driver.begin(config)
    return driver
  }

  /** From the origin of an exported firing: the folds continue as they stood there. */
  static from<I, K>(folds: Folds<I, K>, setup: { root: string; site: string; origin: Origin }): Driver<I, K> {
    const { intake, known } = thawOrigin(setup.origin.bytes)
    const driver = new Driver<I, K>(folds, {
      root: setup.root,
      site: setup.site,
      intake: folds.intake.thaw(intake),
      seq: setup.origin.seq,
      at: setup.origin.at,
      sessions: new Map(),
      known,
      acts: new Set(),
      refused: {},
      rolling: false,
    })
    driver.begin(setup.origin.config)
    return driver
  }

  /** The seconds before the entry, then the entry. */
  drive(entry: JournalEntry): Effect[] {
    this.tickUpTo(entry.at)
    this.state.seq = entry.seq
    this.guarded(() => this.apply(entry))
    return this.take()
  }

  /** The seconds up to `at`, that one included. */
  advance(at: Ms): Effect[] {
    this.tickUpTo(at)
    return this.take()
  }

  /** Effects of beginning, before the first entry. */
  take(): Effect[] {
    const effects = this.effects
    this.effects = []
    return effects
  }

  /** After a long rest in which nobody fired the idle hours are left out, but for the last. */
  private skipIdle(at: Ms): void {
    const hour = Math.floor(at / hourMs) * hourMs
    if (!this.state.rolling || hour - this.state.at < hourMs) return
    for (const session of this.state.sessions.values()) if (session.openedAt !== null) return
    this.state.at = hour
    for (const session of [...this.state.sessions.values()]) this.begin(session.config)
  }

  private tickUpTo(at: Ms): void {
    const { state } = this
    this.skipIdle(at)
    for (let second = state.at + secondMs; second <= at; second += secondMs) {
      state.at = second
      const rolls = state.rolling && second % hourMs === 0
      for (const session of state.sessions.values()) {
        if (rolls && session.openedAt === null) this.begin(session.config)
        else this.guarded(() => this.put(session, { kind: 'tick', seq: state.seq, at: second }))
      }
    }
  }

  private guarded(run: () => void): void {
    try {
      run()
    } catch (problem) {
      this.effects.push({ kind: 'failed', seq: this.state.seq, problem })
    }
  }

  private apply(entry: JournalEntry): void {
    switch (entry.kind) {
      case 'message':
        return this.applyMessage(entry)
      case 'act':
        return this.applyAct(entry, documentOf<Act>(entry))
      case 'config':
        return this.applyConfig(entry, documentOf<KilnConfig>(entry))
      case 'health': {
        const health = documentOf<{ code: HealthCode; on: boolean }>(entry)
        const input = { kind: 'health', ...health } as const
        remember(this.state.known, input)
        for (const session of this.state.sessions.values()) this.step(session, entry.at, input)
      }
    }
  }

  private applyMessage(entry: JournalEntry): void {
    const { state, folds } = this
    const result = folds.intake.step(state.intake, entry)
    state.intake = result.state
    for (const refusal of result.refused) {
      state.refused[refusal.reason] = (state.refused[refusal.reason] ?? 0) + 1
      this.effects.push({ kind: 'refused', entry, refusal })
    }
    for (const command of result.commands) this.effects.push({ kind: 'command', ...command })
    const sender = entry.topic.split('/').slice(2, 4).join('/')
    for (const input of result.inputs) this.deliver(entry.at, sender, input)
  }

  private deliver(at: Ms, sender: NodeId, input: KilnInput): void {
    const { sessions, known } = this.state
    remember(known, input)
    if (input.kind === 'sample') this.ear?.(input)
    if (input.kind === 'sample' || input.kind === 'channel') this.claimFor(at, input.channel)
    for (const session of sessions.values()) {
      if (!concerns(session.config, input, sender)) continue
      this.step(session, at, input)
      if (input.kind === 'sample') {
        session.samples++
        this.plot(session, input)
      }
    }
  }

  private claimFor(at: Ms, channel: string): void {
    const { sessions, known } = this.state
    for (const session of sessions.values()) if (channel in session.config.roles) return
    const taken = claim(sessions.values(), channel) ?? this.handOver(at, channel)
    if (!taken) return
    const { session } = taken
    session.config = { ...session.config, roles: { ...session.config.roles, [channel]: taken.role } }
    this.step(session, at, { kind: 'config', config: session.config })
    const node = nodeOf(channel)
    for (const earlier of [known.get(`channel ${channel}`), known.get(`node ${node}`)]) if (earlier) this.step(session, at, earlier)
  }

  /** While nobody fires, a role goes from a channel that has fallen silent to one of its name that speaks: a first try by hand must not keep it. */
  private handOver(at: Ms, channel: string): { session: Session<K>; role: Role } | null {
    const role = roleByName(channel)
    if (role === null) return null
    for (const session of this.state.sessions.values()) {
      if (session.openedAt !== null) continue
      const { channels } = this.folds.kiln.view(session.state, at)
      const silent = (holder: string): boolean => {
        const heard = channels.find((one) => one.channel === holder)?.heard ?? 'never'
        return heard === 'lost' || (heard === 'never' && at - session.origin.at > silentMs)
      }
      const holder = silentHolder(session.config, role, silent)
      if (holder === null) continue
      const { [holder]: _given, ...roles } = session.config.roles
      session.config = { ...session.config, roles }
      return { session, role }
    }
    return null
  }

  private plot(session: Session<K>, input: Extract<KilnInput, { kind: 'sample' }>): void {
    const role = roleAt(session.config, input.channel)
    if (role === null) return
    const calibration = session.config.calibration[input.channel]
    const value = input.value === null || !calibration ? input.value : calibration.gain * input.value + calibration.offset
    this.effects.push({ kind: 'point', kiln: session.config.kiln, session: session.id, point: { role, t: input.t, value } })
  }

  private applyAct(entry: JournalEntry, act: Act): void {
    const { state } = this
    rememberAct(state.acts, act.id)
    let session = entry.kiln === null ? undefined : state.sessions.get(entry.kiln)
    if (!session) return
    const name = act.act.action
    if (isOver(session, name)) session = this.close(session, entry)
    if (name === 'load' || name === 'arm' || name === 'light') this.open(session, entry.at)
    if (name === 'open') session.triedOpen = true
    const { id, doneAt, corrects } = act
    this.step(session, entry.at, { kind: 'act', id, doneAt, act: act.act, ...(corrects === undefined ? {} : { corrects }) })
    if (name === 'unload' && session.openedAt !== null) this.close(session, entry)
  }

  private applyConfig(entry: JournalEntry, config: KilnConfig): void {
    const session = this.state.sessions.get(config.kiln)
    if (!session) return void this.begin(config)
    session.config = config
    this.step(session, entry.at, { kind: 'config', config })
  }

  private open(session: Session<K>, at: Ms): void {
    if (session.openedAt !== null) return
    session.openedAt = at
    this.effects.push({ kind: 'opened', kiln: session.config.kiln, session: session.id, at, seq: this.state.seq })
  }

  private close(session: Session<K>, entry: JournalEntry): Session<K> {
    this.effects.push({ kind: 'closed', kiln: session.config.kiln, session: session.id, at: entry.at, seq: entry.seq })
    return this.begin(session.config)
  }

  private begin(config: KilnConfig): Session<K> {
    const { state, folds } = this
    const before = state.sessions.get(config.kiln)
    const bytes = freezeOrigin(folds.intake.freeze(state.intake), state.known)
    const session = makeSession(folds.kiln.start(config), config, { seq: state.seq, at: state.at, config, bytes })
    // two sessions may begin after the same entry: their outputs must not share numbers
    if (before?.cause === session.cause) session.nextN = before.nextN
    state.sessions.set(config.kiln, session)
    for (const input of state.known.values()) if (concerns(config, input, null)) this.step(session, state.at, input)
    return session
  }

  private step(session: Session<K>, at: Ms, input: Numberless<Input>): void {
    this.put(session, { ...input, seq: this.state.seq, at } as Input)
  }

  private put(session: Session<K>, input: Input): void {
    const result = this.folds.kiln.step(session.state, input)
    session.state = result.state
    if (result.outputs.length > 0) this.tell(session, result.outputs)
  }

  private tell(session: Session<K>, outputs: readonly Output[]): void {
    const { seq } = this.state
    const kiln = session.config.kiln
    for (const output of outputs) {
      if (!lets(session.pace, output)) continue
      if (session.cause !== seq) {
        session.cause = seq
        session.nextN = 0
      }
      this.effects.push({ kind: 'output', kiln, session: session.id, output: { ...output, cause: seq, n: session.nextN++ } })
      if (output.kind === 'estimate') {
        const point = { role: 'smoke-estimated', t: output.at, value: output.estimate.smokeC } as const
        this.effects.push({ kind: 'point', kiln, session: session.id, point })
      }
      if (output.kind === 'phase') session.phase = output.phase
      // lighting may be inferred from the readings: then nobody loaded or lit, and the firing opens here
      if (output.kind === 'phase' && session.openedAt === null && this.folds.kiln.view(session.state, output.at).firing.litAt !== null) {
        this.open(session, output.at)
      }
    }
  }
}

/** Loading or lighting again after a trial opening, or loading again after the fire died, is another firing. */
function isOver(session: Session<unknown>, action: ActionName): boolean {
  if (session.openedAt === null) return false
  return action === 'load' ? session.triedOpen || session.phase === 'failed' : action === 'light' && session.triedOpen
}

const nodeOf = (channel: string): NodeId => channel.slice(0, channel.lastIndexOf('/'))

/** @param sender node of the message that the input came from; null where it is told again at a beginning. */
function concerns(config: KilnConfig, input: KilnInput, sender: NodeId | null): boolean {
  if (input.kind === 'sample' || input.kind === 'channel') return input.channel in config.roles
  const node = input.kind === 'node' ? input.node : sender
  return node === null || Object.keys(config.roles).some((channel) => nodeOf(channel) === node)
}
