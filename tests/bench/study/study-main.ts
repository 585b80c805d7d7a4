// Scores the estimator and the simple rules on simulated firings whose kilns share no code with domain/kiln.
// npm run study -- [--count 12] [--first 1001] [--sealed] [--rows FILE] [--plots 6]
// --sealed follows each kiln until it is cold as well; --rows keeps what study-fit learns from. The long form: --count 200 --sealed.
import { appendFileSync, mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { defaultSettings } from '../../../server/domain/estimate/settings.ts'
import { makeFiring } from '../../../server/simulator/firing/world.ts'
import { byRule, simpleRules } from './bands.ts'
import { draw } from './draw.ts'
import { captured } from './rows.ts'
import { watch, type Watched } from './watch.ts'

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '12' },
    first: { type: 'string', default: '1001' },
    sealed: { type: 'boolean', default: false },
    rows: { type: 'string' },
    plots: { type: 'string', default: '6' },
  },
})
const out = join(process.cwd(), 'tests', 'bench', 'study', 'out')
mkdirSync(out, { recursive: true })

const mean = (a: number[]): number => a.reduce((x, y) => x + y, 0) / a.length
const middle = (a: number[]): number => [...a].sort((x, y) => x - y)[Math.floor(a.length / 2)] ?? NaN
const minutes = (a: number | null, b: number | null): string => (a === null || b === null ? '-' : ((a - b) * 60).toFixed(0)).padStart(5)
const groups = new Map<string, number[]>()
const note = (group: string, score: number): void => void groups.set(group, [...(groups.get(group) ?? []), score])
const watched: Watched[] = []
let falseStarts = 0

const first = Number(values.first)
for (let n = first; n < first + Number(values.count); n++) {
  const firing = makeFiring(`world-${n}`)
  const hasSmoke = firing.sampled.channels.some((c) => c.name === 'smoke')
  const hasSights = firing.looks.length > 0
  for (const smoke of hasSmoke ? [true, false] : [false]) {
    const w = watch(`w${n}`, firing, defaultSettings, { smoke, sights: true, sealed: values.sealed && (smoke || !hasSmoke) })
    const score = captured(w.rows, w.decision)
    watched.push(w)
    note(smoke ? 'estimator, smoke probe' : 'estimator, three probes', score)
    if (hasSights) note(smoke ? '  of these with sights, smoke probe' : '  of these with sights, three probes', score)
    if (firing.plan.kind === 'never-catches' && w.decision.start !== null) falseStarts++
    if (values.rows) appendFileSync(values.rows, `${JSON.stringify(w.rows)}\n`)
    if (watched.length <= Number(values.plots)) writeFileSync(join(out, `w${n}-${smoke ? 'smoke' : 'three'}.svg`), draw(w, score))
    const { start, stop, seal } = w.decision
    console.log(
      `w${n} ${firing.plan.family.padEnd(6)} ${firing.plan.kind.padEnd(16)} ${smoke ? 'smoke' : 'three'} captured ${score.toFixed(2).padStart(5)}  start ${minutes(start, w.rows.start)} stop ${minutes(stop, w.rows.stop)} seal ${minutes(seal, w.rows.seal)} min  ${w.millisecondsAStep.toFixed(2)} ms a step`,
    )
  }
  for (const rule of simpleRules) {
    const decision = byRule(firing, rule)
    if (decision) note(rule.name, captured({ minutes: firing.truth.minutes, bestValue: firing.truth.best.value }, decision))
  }
}

console.log('\nvalue captured            firings   mean  worst')
for (const [group, scores] of [...groups].sort(([a], [b]) => a.localeCompare(b)))
  console.log(`${group.padEnd(38)} ${String(scores.length).padStart(4)}  ${mean(scores).toFixed(3)}  ${Math.min(...scores).toFixed(2)}`)
console.log(`starts in firings that never catch: ${falseStarts}`)
for (const call of ['start', 'stop', 'seal'] as const) {
  const told = watched.flatMap((w) => w.told.filter((t) => t.call === call))
  if (told.length > 0)
    console.log(
      `${call.padEnd(5)} forecasts inside ${(100 * mean(told.map((t) => (t.inside ? 1 : 0)))).toFixed(0)} % of ${told.length}, mean width ${mean(told.map((t) => t.widthMin)).toFixed(0)} min, interval score ${mean(told.map((t) => t.widthMin + 10 * t.offMin)).toFixed(0)}`,
    )
}
const seals = watched.flatMap((w) =>
  w.rows.seal !== null && w.decision.seal !== null ? [Math.abs(w.decision.seal - w.rows.seal) * 60] : [],
)
console.log(`|seal| median ${middle(seals).toFixed(0)} min of ${seals.length}`)
if (values.sealed) {
  const sealed = watched.map((w) => w.sealed).filter((s) => s.calledH !== null)
  const unsafe = sealed.filter((s) => s.below50H === null || (s.calledH ?? 0) < s.below50H)
  const late = sealed.flatMap((s) => (s.calledH !== null && s.below45H !== null ? [s.calledH - s.below45H] : []))
  console.log(`bound under 45 °C in ${sealed.length} sealed phases, unsafe ${unsafe.length}, late by ${middle(late).toFixed(1)} h (median)`)
}
