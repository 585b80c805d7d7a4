// npm run fuzz -- [--seconds 60] [--seed N] [--door PART-OF-A-NAME]
// Changed inputs at every decoder until the time is over; status 1 and the inputs when a promise was broken. The same seed, the same inputs.
import { ensureBuilt } from '../../server/launch.mjs'
import { runBundled } from '../support/bundle.mjs'
import { explained } from '../support/explained.mjs'

explained(import.meta.url, ['--seconds', '--seed', '--door'])

ensureBuilt()
process.exitCode = await runBundled({ fuzz: 'tests/fuzz/fuzz-main.ts' })
