// node tests/bench/estimate/run.mjs
import { runBundled } from '../../support/bundle.mjs'

process.exitCode = await runBundled({ measure: 'tests/bench/estimate/measure-main.ts' })
