// node tests/bench/intake/run.mjs [ROUNDS]
// A firing of 40 hours, a pack of three bent channels every 10 s, through the intake fold and a track of each channel.
import { runBundled } from '../../support/bundle.mjs'
import { explained } from '../../support/explained.mjs'

explained(import.meta.url)

process.exitCode = await runBundled({ firing: 'tests/bench/intake/firing-main.ts' })
