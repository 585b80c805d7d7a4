import { createInterface } from 'node:readline'
import { parseArgs } from 'node:util'
import { Buzzer } from './buzzer.ts'

const usage = `A buzzer node, as the firmware notes describe it.

  npm run buzzer -- [--broker mqtt://127.0.0.1:1883] [--root firing] [--site yard] [--node buzzer] [--firing] [--probe]

Prints a line at each change of what it would sound. --firing: it remembers that a firing runs. --probe: it has a probe of its own in the
condenser's outlet, whose readings come as lines of its input, °C; a line that is no number is a fault.`

function readArguments() {
  try {
    return parseArgs({
      options: {
        broker: { type: 'string', default: 'mqtt://127.0.0.1:1883' },
        root: { type: 'string', default: 'firing' },
        site: { type: 'string', default: 'yard' },
        node: { type: 'string', default: 'buzzer' },
        firing: { type: 'boolean', default: false },
        probe: { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    }).values
  } catch (error) {
    console.error(error instanceof Error ? error.message : String(error))
    process.exit(2)
  }
}

const flags = readArguments()
if (flags.help) {
  console.log(usage)
} else {
  const { broker, root, site, node } = flags
  const boot = Math.floor(Math.random() * 4294967296)
  const buzzer = new Buzzer(
    { broker, root, site, node, boot, onSound: (sound) => console.log(JSON.stringify({ at: new Date().toISOString(), ...sound })) },
    flags.firing,
  )
  buzzer.start()
  if (flags.probe)
    createInterface({ input: process.stdin }).on('line', (line) => {
      const celsius = line.trim() === '' ? NaN : Number(line)
      buzzer.probe(Number.isFinite(celsius) ? celsius : null)
    })
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void buzzer.stop().then(() => process.exit(0)))
}
