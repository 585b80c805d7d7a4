// npm run bench:soak -- [MINUTES-AT-FIELD-LOAD 1] [MINUTES-AT-TEN-TIMES-THAT 10]; release: npm run bench:soak -- 5 150
import { ensureBuilt } from '../../../server/launch.mjs'
import { runBundled } from '../../support/bundle.mjs'
import { explained } from '../../support/explained.mjs'

explained(import.meta.url)

ensureBuilt()
process.exitCode = await runBundled({ measure: 'tests/bench/soak/measure-main.ts' })
