import type { Clock } from '../../server/runtime/clock.ts'

/** A clock that stands until it is moved; timers that fall due on the way run in order. */
export class ManualClock implements Clock {
  private time: number
  private timers: { when: number; run: () => void }[] = []
  constructor(start: number) {
    this.time = start
  }
  now(): number {
    return this.time
  }
  at(when: number, run: () => void): () => void {
    const timer = { when, run }
    this.timers.push(timer)
    return () => {
      this.timers = this.timers.filter((other) => other !== timer)
    }
  }
  speed(): number {
    return 1
  }
  sure(): boolean {
    return true
  }
  moveTo(time: number): void {
    for (;;) {
      const due = this.timers.filter((t) => t.when <= time).sort((a, b) => a.when - b.when)[0]
      if (!due) break
      this.timers = this.timers.filter((t) => t !== due)
      this.time = Math.max(this.time, due.when)
      due.run()
    }
    this.time = Math.max(this.time, time)
  }
}
