// npm run bench:alarms -- FOLDER... [--each] [--curve]  or  -- --latency [ALARMS] [CONDITION...]  or  -- --dead [BUZZERS]  or  -- --again [RESTARTS]  or  -- --plot
import { ensureBuilt } from '../../../server/launch.mjs'
import { runBundled } from '../../support/bundle.mjs'
import { plot } from './plot.mjs'

const args = process.argv.slice(2)
const part = ['latency', 'dead', 'again', 'plot'].find((name) => args.includes(`--${name}`)) ?? 'measure'
if (part === 'plot') plot(import.meta.dirname)
else {
  if (part !== 'measure') ensureBuilt()
  const names = part === 'latency' ? ['latency', 'around'] : [part]
  const programs = Object.fromEntries(names.map((name) => [name, `tests/bench/alarms/${name}-main.ts`]))
  process.exitCode = await runBundled(programs, () => args.filter((arg) => arg !== `--${part}`))
}
