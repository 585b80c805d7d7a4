import { Buzzer } from '../../../server/simulator/buzzer/buzzer.ts'
import type { Sound } from '../../../server/simulator/buzzer/rules.ts'

const patienceMs = 5000

/** A reference buzzer, and when it began to sound what was waited for. */
export class Ear {
  private pattern = 0
  private readonly buzzer: Buzzer
  private waiting: { pattern: number; done: (at: number | null) => void } | null = null

  constructor(port: number) {
    const onSound = ({ pattern }: Sound): void => {
      this.pattern = pattern
      if (this.waiting?.pattern === pattern) this.waiting.done(performance.now())
    }
    this.buzzer = new Buzzer({ broker: `mqtt://127.0.0.1:${port}`, root: 'firing', site: 'yard', node: 'buzzer', boot: 1, onSound })
  }

  start(): void {
    this.buzzer.start()
  }

  stop(): Promise<void> {
    return this.buzzer.stop()
  }

  /** When it was heard, on performance.now(); null when it was not within 5 s. */
  hear(pattern: number): Promise<number | null> {
    if (this.pattern === pattern) return Promise.resolve(performance.now())
    return new Promise((resolve) => {
      const timer = setTimeout(() => resolve(null), patienceMs)
      this.waiting = {
        pattern,
        done: (at) => {
          clearTimeout(timer)
          this.waiting = null
          resolve(at)
        },
      }
    })
  }
}
