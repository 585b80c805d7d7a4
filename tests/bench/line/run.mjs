// npm run bench:line [-- [SECONDS] [DEMO-SECONDS]]: the line from a node to the page, the start and the memory of the built service, each
// beside bare parts measured in the same run. Ends with 1 when a figure is missed.
import { join } from 'node:path'
import { ensureBuilt } from '../../../server/launch.mjs'
import { runBundled } from '../../support/bundle.mjs'
import { explained } from '../../support/explained.mjs'

explained(import.meta.url)

ensureBuilt()
process.exitCode = await runBundled({ measure: 'tests/bench/line/measure-main.ts', bare: 'tests/bench/line/bare-main.ts' }, (out) => [
  join(out, 'bare.js'),
  ...process.argv.slice(2),
])
