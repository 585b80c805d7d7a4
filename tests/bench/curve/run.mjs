// node tests/bench/curve/run.mjs [OTHER-FIRINGS]
import { join } from 'node:path'
import { runBundled, storageWorker } from '../../support/bundle.mjs'

process.exitCode = await runBundled({ measure: 'tests/bench/curve/measure-main.ts', ...storageWorker }, (out) => [
  join(out, 'storage-worker.js'),
  process.argv[2] ?? '20',
])
