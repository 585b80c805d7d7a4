import { priorities } from '../contract/vocabulary.ts'
import type { KilnId, Ms } from '../contract/fold.ts'
import type { AlarmView, KilnView } from '../contract/live.ts'
import type { Said } from './broker.ts'
import { beatEveryMs, sayAlert, sayBeat, sayCall, sayState, sayTime, timeEveryMs } from './said.ts'
import type { Where } from './said.ts'

/** What the voice knows of the site that it speaks for. */
export interface Spoken {
  kilns(): KilnId[]
  kilnView(kiln: KilnId): KilnView | null
  now(): Ms
  firing(): boolean
  /** False once the loop that evaluates the rules stands still: then there is no beat, and the buzzers sound by themselves. */
  healthy(): boolean
}

const alertEveryMs = 10_000 // reliability 7.1: state, not edge; a buzzer that came late is right soon

/** Says alarms and instructions to buzzers and lamps: on change, again and again, and with a beat in between. */
export class Voice {
  private readonly where: Where
  private readonly site: Spoken
  private readonly publish: (said: Said) => void
  private readonly last = new Map<string, string>()
  private timers: NodeJS.Timeout[] = []
  private beats = 0
  private alerts = 0
  private since: Ms = 0

  constructor(where: Where, site: Spoken, publish: (said: Said) => void) {
    this.where = where
    this.site = site
    this.publish = publish
  }

  start(): void {
    const every = (ms: number, run: () => void) => this.timers.push(setInterval(run, ms))
    every(beatEveryMs, () => {
      if (this.site.healthy()) this.publish(sayBeat(this.where, ++this.beats, this.site.firing()))
    })
    every(timeEveryMs, () => this.publish(sayTime(this.where, this.site.now())))
    every(alertEveryMs, () => this.publish(this.alert()))
  }

  stop(): void {
    for (const timer of this.timers) clearInterval(timer)
    this.timers = []
  }

  /** What stands now, for a broker that has just started. */
  standing(): Said[] {
    this.since ||= this.site.now()
    return [sayState(this.where, 'online', this.since), this.alert(), ...this.calls()]
  }

  offline(): Said {
    return sayState(this.where, 'offline', this.site.now())
  }

  /** What is to be heard now, for a sound that is not a buzzer's. */
  sounding(): Pick<AlarmView, 'alarm' | 'priority'> | null {
    const { alarm, silenced } = this.worst()
    return silenced ? null : alarm
  }

  /** Called after every step of the folds: says what has changed. */
  speak(): void {
    const { alarm, silenced } = this.worst()
    this.changed('alert', JSON.stringify([alarm?.alarm, alarm?.priority, alarm?.since, silenced]), () => this.alert())
    for (const said of this.calls()) this.changed(said.topic, said.payload, () => said)
  }

  private changed(key: string, text: string, said: () => Said): void {
    if (this.last.get(key) === text) return
    this.last.set(key, text)
    this.publish(said())
  }

  private views(): KilnView[] {
    return this.site.kilns().flatMap((kiln) => this.site.kilnView(kiln) ?? [])
  }

  private worst(): ReturnType<typeof standingAlarm> {
    return standingAlarm(this.views().flatMap((view) => view.alarms))
  }

  private alert(): Said {
    const { alarm, silenced } = this.worst()
    const { where } = this
    this.alerts++
    if (!alarm) return sayAlert(where, 'none', '', this.site.now(), true, this.alerts)
    return sayAlert(where, alarm.priority, alarm.alarm, alarm.since, silenced, this.alerts)
  }

  private calls(): Said[] {
    return this.views().map(({ firing, command }) => sayCall(this.where, firing.kiln, firing.firing, command.do, command.since))
  }
}

const sounding: readonly AlarmView['state'][] = ['unacknowledged', 'latched-unacknowledged']
const standing: readonly AlarmView['state'][] = [...sounding, 'acknowledged', 'returned-unacknowledged', 'latched-acknowledged']

/** The one that a buzzer plays: of those that nobody has acknowledged the most urgent and oldest, else of all that stand. */
export function standingAlarm(alarms: readonly AlarmView[]): { alarm: AlarmView | null; silenced: boolean } {
  const rank = (alarm: AlarmView) => priorities.indexOf(alarm.priority)
  const worst = (states: typeof standing) =>
    alarms.filter((alarm) => states.includes(alarm.state)).sort((a, b) => rank(b) - rank(a) || a.since - b.since)[0] ?? null
  const loud = worst(sounding)
  return { alarm: loud ?? worst(standing), silenced: loud === null }
}
