// npm run bench:shelf [-- [FIRINGS] [READINGS-OF-EACH]]: how long the shelf of many firings takes, beside bare parts
import { join } from 'node:path'
import { ensureBuilt } from '../../../server/launch.mjs'
import { runBundled, storageWorker } from '../../support/bundle.mjs'
import { explained } from '../../support/explained.mjs'

explained(import.meta.url)

ensureBuilt()
const [firings = '2000', readings = '7500'] = process.argv.slice(2)
process.exitCode = await runBundled({ measure: 'tests/bench/shelf/measure-main.ts', ...storageWorker }, (out) => [
  join(out, 'storage-worker.js'),
  firings,
  readings,
])
