import type { Action } from '../../../../server/contract/actions.ts'
import type { ActId, Ms } from '../../../../server/contract/fold.ts'
import type { ServerMessage } from '../../../../server/contract/live.ts'
import { liveAddress, type Place } from '../place.ts'
import { SiteClock, speedOf } from './clock.svelte.ts'
import { Link } from './link.ts'
import { LiveState } from './live.svelte.ts'
import { Outbox, type Drawer, type Entry } from './outbox.svelte.ts'
import { SleepWatch } from './sleep.svelte.ts'

/** The link to the service with all that hangs on it. Constructed in App, started there, handed down by context. */
export class Session {
  readonly place: Place
  readonly clock = new SiteClock()
  readonly live = new LiveState()
  readonly sleep = new SleepWatch()
  readonly outbox: Outbox
  readonly #link: Link
  #ticking: ReturnType<typeof setInterval> | undefined
  #beats = 0

  up = $state(false)
  /** The last entry made on this page, shown for a while so that its time can be put right. */
  justNow = $state.raw<Entry | null>(null)

  constructor(place: Place, drawer: Drawer) {
    this.place = place
    this.outbox = new Outbox(drawer, `outbox ${place.base.pathname}`)
    this.#link = new Link(liveAddress(place), {
      opened: () => {
        this.up = true
      },
      heard: (message) => this.#heard(message),
      closed: () => {
        this.up = false
      },
    })
  }

  start(): void {
    this.#link.start()
    // four times a second, so that a demo at x600 still moves; the sleep watch looks every second
    this.#ticking = setInterval(() => this.#tick(), 250)
  }

  stop(): void {
    clearInterval(this.#ticking)
    this.#link.stop()
  }

  /** Site time, exact. */
  now(): Ms {
    return this.clock.read()
  }

  /** Logs what was done. Null when it was the same touch once more, or no kiln is known. */
  act(act: Action, doneAt: Ms = this.now(), corrects?: ActId): Entry | null {
    const kiln = this.live.kilnId
    if (kiln === null) return null
    const entry = this.outbox.add(kiln, act, doneAt, corrects)
    if (!entry) return null
    if (!['acknowledge', 'arm', 'shelve', 'unshelve'].includes(act.action)) this.justNow = entry
    this.#send(entry)
    return entry
  }

  #send(entry: Entry): void {
    if (this.up && this.live.ready) this.#link.send({ type: 'act', ...entry })
  }

  #tick(): void {
    this.clock.tick()
    this.#beats += 1
    if (this.#beats % 4 !== 0) return
    this.#link.look()
    if (this.sleep.tick()) this.#link.hurry()
    // an entry whose answer got lost, or that the store could not take, is sent again; the service takes an id only once
    if (this.#beats % 40 === 0 && this.up && this.outbox.waiting.length > 0) this.outbox.sendAll((act) => this.#link.send(act))
  }

  #heard(message: ServerMessage): void {
    if ('now' in message) {
      this.clock.heard(message.now, speedOf(message, this.place, this.live.site))
    }
    if (message.type === 'act-taken') this.outbox.taken(message.id)
    else if (message.type === 'act-refused') {
      if (message.problem !== 'storage-failing') this.outbox.refusedWith(message.id, message.problem)
    } else this.live.apply(message)
    if (message.type === 'hello') this.outbox.sendAll((act) => this.#link.send(act))
  }
}
