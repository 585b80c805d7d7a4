import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { defaultKilnConfig } from './contract/kiln-defaults.ts'
import { entryOf } from './recordings/entries.ts'
import { configOf, placeOf } from './recordings/play.ts'
import { readRecording } from './recordings/read.ts'
import type { RecordingLine } from './contract/recording.ts'
import type { Act } from './contract/actions.ts'
import type { Instance } from './http/instance.ts'
import { instanceOf } from './instance.ts'
import type { AppFolds, AppSite } from './instance.ts'
import { documentOf } from './runtime/entry.ts'
import type { Log } from './runtime/log.ts'
import { Site } from './runtime/site.ts'
import { SteppedClock } from './runtime/stepped-clock.ts'
import { createMemoryStore } from './storage/memory.ts'

/** How often the demo's clock is moved on, of real time. */
const stepMs = 20
/** At 600 times a step is 12 s of the firing; a host that slept must not make one step of hours. */
const longestStepMs = 250

/** The shipped recording of a made-up firing, played through a second site with a clock, a store and topics of its own. */
export class Demo {
  private readonly lines: readonly RecordingLine[]
  private readonly clock: SteppedClock
  private readonly site: AppSite
  private readonly kiln = defaultKilnConfig().kiln
  private next = 0
  private timer: NodeJS.Timeout | null = null
  readonly instance: Instance

  constructor(file: string, folds: AppFolds, log: Log, speed: number) {
    const { header, lines } = readRecording(readFileSync(file))
    this.lines = lines
    const start = Date.parse(lines[0]?.at ?? '1970-01-01T00:00:00Z')
    this.clock = new SteppedClock(start, speed)
    const store = createMemoryStore()
    const { root, site } = placeOf(lines)
    const config = configOf(header)
    const setup = { folds, store, clock: () => this.clock, root, site, configs: [config], demo: true, log }
    this.site = new Site(setup)
    this.instance = instanceOf(this.site, store, {
      demo: () => ({ playing: this.timer !== null, speed: this.clock.speed() }),
      isDemo: true,
      clockWord: () => null,
    })
  }

  async start(): Promise<void> {
    await this.site.start()
    let before = performance.now()
    this.timer = setInterval(() => {
      const now = performance.now()
      this.play(this.clock.now() + Math.min(longestStepMs, now - before) * this.clock.speed())
      before = now
    }, stepMs)
  }

  async stop(): Promise<void> {
    this.pause()
    await this.site.stop()
  }

  setSpeed(speed: number): void {
    this.clock.setSpeed(speed)
  }

  /** Each line at its own time, the seconds in between; after the last one time stands still. */
  private play(until: number): void {
    const to = Math.floor(until)
    for (let line = this.lines[this.next]; line && Date.parse(line.at) <= to; line = this.lines[++this.next]) {
      this.clock.moveTo(Date.parse(line.at))
      this.enter(line)
    }
    if (this.next >= this.lines.length) this.pause()
    else this.clock.moveTo(to)
  }

  private enter(line: RecordingLine): void {
    const entry = entryOf(line, { seq: this.next, at: this.clock.now(), kiln: this.kiln })
    if (entry.kind === 'message') void this.site.receive(entry)
    if (entry.kind === 'act') void this.site.act(this.kiln, documentOf<Act>(entry))
  }

  private pause(): void {
    if (this.timer) clearInterval(this.timer)
    this.timer = null
  }
}

/** The first recording of the folder; null where there is none. */
export function demoFile(folder: string): string | null {
  if (!existsSync(folder)) return null
  const name = readdirSync(folder)
    .filter((one) => /\.jsonl(\.gz)?$/.test(one))
    .sort()[0]
  return name === undefined ? null : join(folder, name)
}
