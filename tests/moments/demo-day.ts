import { readFileSync } from 'node:fs'
import { WebSocket } from 'ws'
import type { Action } from '../../server/contract/actions.ts'
import type { Ms } from '../../server/contract/fold.ts'
import type { KilnView, ServerMessage } from '../../server/contract/live.ts'
import type { RecordingLine } from '../../server/contract/recording.ts'
import type { AlarmCode, Call, Role } from '../../server/contract/vocabulary.ts'
import { readRecording } from '../../server/recordings/read.ts'
import { driveApp, post } from '../support/driven-app.ts'
import type { DrivenApp } from '../support/driven-app.ts'

const minute = 60_000
/** So many answer in turn, each within its ration. */
const pages = 20
/** What the person of this day does because the screen says so, and not when the recording says so. */
const calledActs = ['start-collecting', 'stop-collecting', 'glass', 'note', 'refine', 'crack', 'open', 'unload', 'arm']

/** The demo firing sent through MQTT into the real service, by somebody who does what the screen says a few minutes later. */
export class DemoDay {
  readonly app: DrivenApp
  readonly #lines: readonly RecordingLine[]
  /** What a page is told, over the same link. */
  readonly #told: Partial<KilnView> = {}
  readonly #watchers: readonly WebSocket[]
  #next = 0
  #acts = 0

  private constructor(app: DrivenApp, lines: readonly RecordingLine[]) {
    this.app = app
    this.#lines = lines
    const link = () => new WebSocket(`${app.url.replace('http', 'ws')}/live`, { origin: app.url })
    this.#watchers = Array.from({ length: pages }, link)
    this.#watchers[0]?.on('message', (text: Buffer) => this.#hear(JSON.parse(text.toString()) as ServerMessage))
  }

  static async start(): Promise<DemoDay> {
    const file = new URL('../../server/simulator/demo/demo-firing.jsonl.gz', import.meta.url)
    const { lines } = readRecording(readFileSync(file))
    const kilns = [{ kiln: 'kiln-1', name: 'Demo kiln', sign: 'bird', condenser: 'wet-cloths' }]
    const app = await driveApp({ at: Date.parse(lines[0]?.at ?? ''), settings: { site: 'demo', kilns } })
    return new DemoDay(app, lines)
  }

  get now(): Ms {
    return this.app.clock.now()
  }

  /** What the screen shows of a probe, to the whole degree; null where it shows none. */
  shown(role: Role): number | null {
    const value = (this.#told.channels ?? []).find((one) => one.role === role)?.value ?? null
    return value === null ? null : Math.round(value)
  }

  due(call: Call): boolean {
    return (this.#told.calls ?? []).some((one) => one.call === call && one.state === 'due')
  }

  alarmed(code: AlarmCode): boolean {
    return (this.#told.alarms ?? []).some((one) => one.alarm === code && one.state === 'unacknowledged')
  }

  async act(act: Action): Promise<void> {
    const answer = await post(`${this.app.url}/api/acts`, { id: `day-${(this.#acts += 1)}`, kiln: 'kiln-1', act, doneAt: this.now })
    if (!answer.ok) throw new Error(`${act.action} was not taken: ${await answer.text()}`)
  }

  /** On to `time`, or to the first reading after which `stop` holds. Each line comes at its own time. */
  async playTo(time: Ms, stop: () => boolean = () => false): Promise<void> {
    for (let line = this.#lines[this.#next]; line && Date.parse(line.at) <= time; line = this.#lines[this.#next]) {
      this.#next += 1
      this.app.clock.moveTo(Date.parse(line.at))
      await this.#enter(line)
      // a page whose script is silent for 13 s would be told of; kiln time runs far faster than one page may answer here
      this.#watchers[this.#next % this.#watchers.length]?.send(JSON.stringify({ type: 'echo', n: 0, visible: true }))
      if (stop()) return
    }
    this.app.clock.moveTo(time)
  }

  playFor(minutes: number): Promise<void> {
    return this.playTo(this.now + minutes * minute)
  }

  async #enter(line: RecordingLine): Promise<void> {
    if ('topic' in line && 'payload' in line) {
      await this.app.client.publishAsync(line.topic, JSON.stringify(line.payload), { qos: 1, retain: line.retained ?? false })
    } else if ('action' in line) {
      const { at: _at, id: _id, doneAt: _doneAt, corrects: _corrects, ...act } = line
      // bottles are changed as they fill, from when the screen said to put one there
      const tooSoon = act.action === 'swap-bottle' && (this.#told.firing?.collectingSince ?? null) === null
      if (!calledActs.includes(act.action) && !tooSoon) await this.act(act as Action)
    }
  }

  #hear(message: ServerMessage): void {
    if (message.type === 'hello') Object.assign(this.#told, message.kilns['kiln-1'])
    if (message.type === 'kiln') Object.assign(this.#told, { [message.part]: message.value })
  }

  async stop(): Promise<void> {
    for (const link of this.#watchers) link.close()
    await this.app.client.endAsync(true)
    await this.app.app.stop()
  }
}
