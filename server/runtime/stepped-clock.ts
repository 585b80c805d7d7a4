import type { Ms } from '../contract/fold.ts'
import type { Clock } from './clock.ts'

/** A clock that stands until it is moved; timers that fall due on the way run in order, each at its own time. */
export class SteppedClock implements Clock {
  private time: Ms
  private rate: number
  private timers: { when: Ms; run: () => void }[] = []

  /** @param rate how fast whoever moves it moves it, against real time */
  constructor(start: Ms, rate = 1) {
    this.time = start
    this.rate = rate
  }

  now(): Ms {
    return this.time
  }

  at(when: Ms, run: () => void): () => void {
    const timer = { when, run }
    this.timers.push(timer)
    return () => {
      this.timers = this.timers.filter((other) => other !== timer)
    }
  }

  speed(): number {
    return this.rate
  }

  setSpeed(rate: number): void {
    this.rate = rate
  }

  sure(): boolean {
    return true
  }

  catchUp(): void {}

  /** Never back: an earlier time is now. */
  moveTo(time: Ms): void {
    for (let due = this.firstDue(time); due; due = this.firstDue(time)) {
      const timer = due
      this.timers = this.timers.filter((other) => other !== timer)
      this.time = Math.max(this.time, timer.when)
      timer.run()
    }
    this.time = Math.max(this.time, time)
  }

  private firstDue(time: Ms): { when: Ms; run: () => void } | undefined {
    return this.timers.filter((timer) => timer.when <= time).sort((a, b) => a.when - b.when)[0]
  }
}
