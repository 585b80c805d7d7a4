// npm run bench:alarms -- --help
import { ensureBuilt } from '../../../server/launch.mjs'
import { runBundled } from '../../support/bundle.mjs'
import { plot } from './plot.mjs'

const usage = `What the alarms are worth, and how fast they come. Each ends with a status other than 0 when its figure is missed.

npm run bench:alarms -- FOLDER... [--each] [--curve]   told and false on simulated firings (npm run worlds -- FOLDER --as grid --count 60
                                                        writes such a FOLDER), or on recordings beside their truth; --curve for every delay
npm run bench:alarms -- --plot                          draws the table of CURVE.md as curve.svg
npm run bench:alarms -- --latency [ALARMS] [CONDITION...]   from the reading to the buzzer, ALARMS (1000) under each CONDITION:
                                                        'one kiln', load, tablets, checkpoint, backup, 'disk full' (this one needs root)
npm run bench:alarms -- --dead [BUZZERS]                the service killed or frozen, until the buzzer's own sound
npm run bench:alarms -- --again [RESTARTS]              killed and started again, until the alarm that stood is told

The whole figures, on a machine that does nothing else:
npm run bench:alarms -- --latency 1667                  10,000 alarms over the six conditions, 2,000 readings/s from 200 nodes (60 and 6 in the first)
npm run bench:alarms -- --dead 100                      100 buzzers, ten at a time
npm run bench:alarms -- --again 100                     100 restarts`
const args = process.argv.slice(2)
if (args.includes('--help') || args.includes('-h')) {
  console.log(usage)
  process.exit(0)
}
const part = ['latency', 'dead', 'again', 'plot'].find((name) => args.includes(`--${name}`)) ?? 'measure'
if (part === 'plot') plot(import.meta.dirname)
else {
  if (part !== 'measure') ensureBuilt()
  const names = part === 'latency' ? ['latency', 'around'] : [part]
  const programs = Object.fromEntries(names.map((name) => [name, `tests/bench/alarms/${name}-main.ts`]))
  process.exitCode = await runBundled(programs, () => args.filter((arg) => arg !== `--${part}`))
}
