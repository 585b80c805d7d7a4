import { existsSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { defaultKilnConfig } from './contract/kiln-defaults.ts'
import { entryOf } from './recordings/entries.ts'
import { configOf, placeOf } from './recordings/play.ts'
import { streamRecording } from './recordings/stream.ts'
import type { RecordingStream } from './recordings/stream.ts'
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
  private readonly lines: RecordingStream['lines']
  private readonly clock: SteppedClock
  private readonly site: AppSite
  private readonly log: Log
  private readonly kiln = defaultKilnConfig().kiln
  /** The line that comes next; null after the last one. */
  private ahead: RecordingLine | null
  private played = 0
  private isPlaying = false
  private timer: NodeJS.Timeout | null = null
  readonly instance: Instance

  private constructor({ header, lines }: RecordingStream, first: RecordingLine | null, folds: AppFolds, log: Log, speed: number) {
    this.lines = lines
    this.ahead = first
    this.log = log
    this.clock = new SteppedClock(Date.parse(first?.at ?? '1970-01-01T00:00:00Z'), speed)
    const store = createMemoryStore()
    const { root, site } = placeOf(first ? [first] : [])
    const config = configOf(header)
    const setup = { folds, store, clock: () => this.clock, root, site, configs: [config], demo: true, log }
    this.site = new Site(setup)
    this.instance = instanceOf(this.site, store, {
      demo: () => ({ playing: this.timer !== null, speed: this.clock.speed() }),
      isDemo: true,
      clockWord: () => null,
    })
  }

  /** @throws RecordingProblem when the file does not begin as a recording does */
  static async of(file: string, folds: AppFolds, log: Log, speed: number): Promise<Demo> {
    const recording = await streamRecording(file)
    const first = await recording.lines.next()
    return new Demo(recording, first.value ?? null, folds, log, speed)
  }

  async start(): Promise<void> {
    await this.site.start()
    let before = performance.now()
    this.timer = setInterval(() => {
      if (this.isPlaying) return
      const now = performance.now()
      void this.play(this.clock.now() + Math.min(longestStepMs, now - before) * this.clock.speed())
      before = now
    }, stepMs)
  }

  async stop(): Promise<void> {
    this.pause()
    await this.lines.return()
    await this.site.stop()
  }

  /** Its last line was played, or it could not be read on: it moves no more and has to be opened anew. */
  hasEnded(): boolean {
    return this.timer === null
  }

  setSpeed(speed: number): void {
    this.clock.setSpeed(speed)
  }

  /** Each line at its own time, the seconds in between; after the last one time stands still. */
  private async play(until: number): Promise<void> {
    const to = Math.floor(until)
    this.isPlaying = true
    try {
      while (this.ahead && Date.parse(this.ahead.at) <= to) {
        this.clock.moveTo(Date.parse(this.ahead.at))
        this.enter(this.ahead)
        this.ahead = (await this.lines.next()).value ?? null
        if (this.timer === null) return // stopped meanwhile
      }
      if (this.ahead === null) this.pause()
      else this.clock.moveTo(to)
    } catch (problem) {
      this.log.error({ problem }, 'the demo can not be read on')
      this.pause()
    } finally {
      this.isPlaying = false
    }
  }

  private enter(line: RecordingLine): void {
    const entry = entryOf(line, { seq: this.played++, at: this.clock.now(), kiln: this.kiln })
    if (entry.kind === 'message') this.site.receive(entry).catch((problem: unknown) => this.notTaken(line, problem))
    if (entry.kind === 'act') this.site.act(this.kiln, documentOf<Act>(entry)).catch((problem: unknown) => this.notTaken(line, problem))
  }

  /** The rest is played all the same: a line of a demo is no reason for the service beside it to end. */
  private notTaken({ at }: RecordingLine, problem: unknown): void {
    this.log.warn({ problem, at }, 'a line of the demo could not be taken')
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
