// npm run bench:estimate: times and sizes of the estimator beside their limits
import { runBundled } from '../../support/bundle.mjs'
import { explained } from '../../support/explained.mjs'

explained(import.meta.url)

process.exitCode = await runBundled({ measure: 'tests/bench/estimate/measure-main.ts' })
