// Scores the calls of the service and the simple rules on simulated firings whose kilns share no code with domain/kiln.
// Each firing is played through the driver and folds of the service, with its smoke probe, with one that fails while collecting, and
// with three probes. --sealed follows each kiln until it is cold as well; --rows keeps what study-fit learns from.
// --same plays sequences of firings in the same kiln (same-kiln.ts), each with what those before it taught.
// The long form, 200 whole firings: npm run study:long (hours).
import { appendFileSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { makeFiring } from '../../../server/simulator/firing/world.ts'
import { asked } from '../asked.ts'
import { byRule, simpleRules } from './bands.ts'
import { draw } from './draw.ts'
import { playSame } from './same.ts'
import { aheadOf, capturedIn, type Span, windowsOf } from './score.ts'
import { emptyTally, note, type Played, tableOf } from './tally.ts'
import { watch } from './watch.ts'

const usage = `Usage: npm run study -- [--count 12] [--first 1001] [--every 1] [--sealed] [--rows FILE] [--plots 6] [--table FILE] | --same FIRINGS [--count 15] [--first 1] [--rows FILE]
Scores the calls of the service and the simple rules on simulated firings.`
const { values } = asked(usage, () =>
  parseArgs({
    options: {
      count: { type: 'string', default: '12' },
      first: { type: 'string', default: '1001' },
      every: { type: 'string', default: '1' },
      sealed: { type: 'boolean', default: false },
      rows: { type: 'string' },
      plots: { type: 'string', default: '6' },
      table: { type: 'string' },
      same: { type: 'string' },
    },
  }),
)
if (values.same) {
  const table = playSame(Number(values.count), Number(values.first), Number(values.same), values.rows)
  console.log(`\n${table}`)
  if (values.table) writeFileSync(values.table, `${table}\n`)
  process.exit(0)
}
const out = join(process.cwd(), 'tests', 'bench', 'study', 'plots')
mkdirSync(out, { recursive: true })

const minutes = (a: number | undefined, b: number | null): string =>
  (a === undefined || b === null ? '-' : ((a - b) * 60).toFixed(0)).padStart(5)
const tally = emptyTally()
let plotted = 0

const [first, every] = [Number(values.first), Number(values.every)]
for (let n = first; n < first + Number(values.count); n += every) {
  const firing = makeFiring(`world-${n}`, { untilSealed: !values.sealed })
  const { best } = firing.truth
  const hasSmoke = firing.sampled.channels.some(({ name }) => name === 'smoke')
  const failsAtH = hasSmoke && best.from !== null && best.to !== null ? (best.from + best.to) / 7200 : null
  type Way = { as: Played['as']; smoke: boolean; smokeFailsAtH: number | null }
  const uses: Way[] = [{ as: 'three probes', smoke: false, smokeFailsAtH: null }]
  if (hasSmoke) uses.push({ as: 'smoke probe', smoke: true, smokeFailsAtH: null })
  if (failsAtH !== null) uses.push({ as: 'smoke probe fails', smoke: true, smokeFailsAtH: failsAtH })
  for (const { as, smoke, smokeFailsAtH } of uses) {
    // the sealed part is judged once a firing, with all that its kiln has
    const sealed = values.sealed && as === (hasSmoke ? 'smoke probe' : 'three probes')
    const w = watch(`w${n}`, firing, { smoke, smokeFailsAtH, sights: true, sealed })
    const spans = windowsOf(w.calls)
    const due = (call: string): number | undefined => w.calls.find((one) => one.call === call && one.state === 'due')?.at
    const played: Played = {
      as,
      firing: n,
      rows: w.rows,
      spans,
      ahead: aheadOf(w),
      seal: due('seal') ?? null,
      open: due('open') ?? null,
      seen: firing.looks.length > 0,
      below45H: firing.truth.hottestBelow[45] === null ? null : firing.truth.hottestBelow[45] / 3600,
      below50H: firing.truth.hottestBelow[50] === null ? null : firing.truth.hottestBelow[50] / 3600,
      sealedPart: sealed,
    }
    note(tally, played)
    const score = capturedIn(w.rows, spans)
    if (values.rows && as !== 'smoke probe fails') appendFileSync(values.rows, `${JSON.stringify(w.rows)}\n`)
    if (plotted++ < Number(values.plots)) writeFileSync(join(out, `w${n}-${as.replaceAll(' ', '-')}.svg`), draw(w, score))
    console.log(
      `w${n} ${firing.plan.family.padEnd(6)} ${firing.plan.kind.padEnd(16)} ${as.padEnd(17)} captured ${score.toFixed(2).padStart(5)}  start ${minutes(spans[0]?.[0], w.rows.start)} stop ${minutes(spans.at(-1)?.[1], w.rows.stop)} seal ${minutes(played.seal ?? undefined, w.rows.seal)} min`,
    )
  }
  for (const rule of simpleRules) {
    const decision = byRule(firing, rule)
    if (decision === null) continue
    const spans: Span[] = decision.start === null ? [] : [[decision.start, decision.stop ?? Infinity]]
    tally.rules.push({ name: rule.name, score: capturedIn({ minutes: firing.truth.minutes, bestValue: best.value }, spans) })
  }
}

const table = tableOf(tally)
console.log(`\n${table}`)
if (values.table) writeFileSync(values.table, `${table}\n`)
