// The service killed or frozen beside a burning kiln, until the buzzer's own sound: npm run bench:alarms -- --dead [BUZZERS]
// Ten buzzers hang on each service; half of the services are killed, half frozen, each at another moment between two beats.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { Buzzer } from '../../../server/simulator/buzzer/buzzer.ts'
import { beatEveryMs } from '../../../server/mqtt/said.ts'
import { post } from '../../support/driven-app.ts'
import { startProgram } from '../../support/program.ts'
import { summary } from './summary.ts'

/** Reliability 11.5. */
const limitMs = 10_000
const onOne = 10
const patienceMs = 20_000
const asked = Number(process.argv[2] ?? 100)
const rounds = Math.ceil(asked / onOne)

/** A buzzer that has heard that a firing runs, and when it first sounds alone after that. */
class Alone {
  readonly burns: Promise<void>
  readonly sounds: Promise<number>
  private readonly buzzer: Buzzer

  constructor(port: number, number: number) {
    let knows: () => void = () => undefined
    let sounded: (at: number) => void = () => undefined
    this.burns = new Promise((done) => (knows = done))
    this.sounds = new Promise((done) => (sounded = done))
    const onSound = ({ alone, test }: { alone: boolean; test: boolean }): void => {
      if (alone) sounded(performance.now())
      else if (!test) knows()
    }
    this.buzzer = new Buzzer({
      broker: `mqtt://127.0.0.1:${port}`,
      root: 'firing',
      site: 'yard',
      node: `buzzer${number}`,
      boot: 1,
      onSound,
    })
  }

  start(): void {
    this.buzzer.start()
  }

  stop(): Promise<void> {
    return this.buzzer.stop().catch(() => undefined)
  }
}

async function round(number: number, buzzers: number): Promise<(number | null)[]> {
  const how = number % 2 === 0 ? 'SIGKILL' : 'SIGSTOP'
  const folder = mkdtempSync(join(tmpdir(), 'dead-'))
  const { child, url, mqttPort, ended } = await startProgram(folder)
  const ears = Array.from({ length: buzzers }, (_, n) => new Alone(mqttPort, n))
  try {
    await post(`${url}/api/acts`, { id: 'lit', kiln: 'kiln-1', act: { action: 'light' } })
    for (const ear of ears) ear.start()
    await Promise.all(ears.map((ear) => ear.burns))
    // two beats, so that every buzzer has one that says that a firing runs
    await pause(2 * beatEveryMs + (number * beatEveryMs) / rounds)
    const from = performance.now()
    child.kill(how)
    return await Promise.all(ears.map(async (ear) => Promise.race([ear.sounds.then((at) => at - from), pause(patienceMs, null)])))
  } finally {
    child.kill('SIGKILL')
    await ended
    await Promise.all(ears.map((ear) => ear.stop()))
    rmSync(folder, { recursive: true, force: true })
  }
}

const took: Record<string, (number | null)[]> = { killed: [], frozen: [] }
for (let n = 0; n < rounds; n++) took[n % 2 === 0 ? 'killed' : 'frozen']?.push(...(await round(n, Math.min(onOne, asked - n * onOne))))
for (const [how, times] of Object.entries(took)) if (times.length > 0) console.log(`${how}: ${summary(times)}`)
const all = Object.values(took).flat()
const inTime = all.filter((ms) => ms !== null && ms <= limitMs).length
console.log(`own sound within ${limitMs / 1000} s: ${inTime} of ${all.length}`)
process.exit(inTime === all.length ? 0 : 1)
