// npm run bench:crowd -- [PART,... crowd,backfill,floods,strangers] [SECONDS-OF-EACH 20]: how the whole built service stands many nodes and
// tablets at once, an hour's backlog beside live readings, floods, and strangers who never log in. Figures: reliability 11.1, 11.3.
import { ensureBuilt } from '../../../server/launch.mjs'
import { runBundled } from '../../support/bundle.mjs'
import { explained } from '../../support/explained.mjs'

explained(import.meta.url)

ensureBuilt()
process.exitCode = await runBundled({ measure: 'tests/bench/crowd/measure-main.ts', flood: 'tests/bench/crowd/flood-main.ts' })
