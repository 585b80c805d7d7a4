import { spawn, type ChildProcess } from 'node:child_process'
import type { AlarmCode, Priority } from '../contract/vocabulary.ts'
import type { Log } from './log.ts'

/** What is to sound: the most urgent alarm that nobody has acknowledged. */
export interface Sounding {
  alarm: AlarmCode
  priority: Priority
}

/** Between two sounds of an alarm that nobody hushes, ms: as often as the page's own; a notice sounds once. */
const everyMs: Record<Priority, number> = { urgent: 5000, warning: 20_000, notice: Infinity }
const lookEveryMs = 1000
/** A program that hangs must not keep the next alarm from sounding, ms. */
const longestMs = 30_000

/**
 * The host's own sound (reliability 7.1, third layer): a program of the owner's, run without a shell with priority and code of the alarm as its
 * two words. It may play a file, ring a bell or close a relay. Only a flag or the environment names it: what runs a program is not set from a page.
 */
export class HostSound {
  private readonly program: string
  private readonly sounding: () => Sounding | null
  private readonly log: Log
  private timer: NodeJS.Timeout | null = null
  private child: ChildProcess | null = null
  private told: string | null = null
  private toldAt = -Infinity

  constructor(program: string, sounding: () => Sounding | null, log: Log) {
    this.program = program
    this.sounding = sounding
    this.log = log
  }

  start(): void {
    this.timer = setInterval(() => this.look(performance.now()), lookEveryMs)
  }

  stop(): void {
    if (this.timer) clearInterval(this.timer)
    this.timer = null
    this.child?.kill()
  }

  /** @param now ms of a clock that only counts */
  look(now: number): void {
    const sounding = this.sounding()
    if (sounding === null) {
      this.told = null
      return
    }
    const { alarm, priority } = sounding
    const what = `${priority} ${alarm}`
    if (what === this.told && now - this.toldAt < everyMs[priority]) return
    // one sound at a time, as on a buzzer
    if (this.child !== null) return
    this.told = what
    this.toldAt = now
    this.play([priority, alarm])
  }

  private play(words: string[]): void {
    const child = spawn(this.program, words, { stdio: 'ignore', timeout: longestMs })
    this.child = child
    const over = (problem: object | null): void => {
      this.child = null
      if (problem !== null) this.log.error({ program: this.program, ...problem }, 'the host could not sound')
    }
    child.once('error', (problem) => over({ problem: problem.message }))
    child.once('exit', (status, signal) => over(status === 0 || this.timer === null ? null : { status, signal }))
  }
}
