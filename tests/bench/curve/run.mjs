// npm run bench:curve [-- OTHER-FIRINGS]: how long the curve of a long firing takes, beside bare parts
import { join } from 'node:path'
import { runBundled, storageWorker } from '../../support/bundle.mjs'
import { explained } from '../../support/explained.mjs'

explained(import.meta.url)

process.exitCode = await runBundled({ measure: 'tests/bench/curve/measure-main.ts', ...storageWorker }, (out) => [
  join(out, 'storage-worker.js'),
  process.argv[2] ?? '20',
])
