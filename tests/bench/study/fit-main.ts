// Fits the learned correction of the estimator on rows that `study --rows` wrote, tells how it does on firings left out, and writes its table.
// npm run study-fit -- ROWS.jsonl [--write TABLE] [--ranges TABLE]; with --ranges it fits how ranges are told instead.
import { readFileSync, writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { defaultSettings } from '../../../server/domain/estimate/settings.ts'
import { asked } from '../asked.ts'
import { fit } from './fit.ts'
import { fitTable } from './fit-ranges.ts'
import { decide, type FiringRows } from './rows.ts'
import { capturedIn, type Span } from './score.ts'

const usage = `Usage: npm run study-fit -- ROWS.jsonl [--write TABLE] [--ranges TABLE] [--quick]
Fits the learned correction of the estimator on rows that study --rows wrote; with --ranges how ranges are told instead.`
const { values, positionals } = asked(usage, () =>
  parseArgs({
    allowPositionals: true,
    options: { write: { type: 'string' }, ranges: { type: 'string' }, quick: { type: 'boolean', default: false } },
  }),
)
const all = positionals.flatMap((file) =>
  readFileSync(file, 'utf8')
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line) as FiringRows),
)
const isOurs = (f: FiringRows): boolean => !f.name.startsWith('p')
const mean = (a: number[]): number => a.reduce((x, y) => x + y, 0) / (a.length || 1)

function tell(title: string, pairs: { f: FiringRows; correction: ReturnType<typeof fit> }[]): void {
  const scores = pairs.map(({ f, correction }) => {
    const { start, stop } = decide(f, correction, defaultSettings)
    const spans: Span[] = start === null ? [] : [[start, stop ?? Infinity]]
    return capturedIn(f, spans)
  })
  const starts = pairs.filter(
    ({ f, correction }) => f.kind === 'never-catches' && decide(f, correction, defaultSettings).start !== null,
  ).length
  console.log(
    `${title}: ${pairs.length} firings, captured ${mean(scores).toFixed(3)} (worst ${Math.min(...scores).toFixed(2)}); starts in firings that never catch: ${starts}`,
  )
}

if (values.ranges) writeFileSync(values.ranges, fitTable(all, console.log))
const tables: Record<string, ReturnType<typeof fit>> = {}
for (const smoke of values.ranges ? [] : [true, false]) {
  const ours = all.filter((f) => f.smoke === smoke && isOurs(f))
  const folds = 4
  const left = Array.from({ length: values.quick ? 0 : folds }, (_, k) => {
    const correction = fit(
      ours.filter((_, i) => i % folds !== k),
      smoke,
    )
    return ours.filter((_, i) => i % folds === k).map((f) => ({ f, correction }))
  }).flat()
  if (left.length > 0) tell(smoke ? 'left out, smoke probe' : 'left out, three probes', left)
  const correction = fit(ours, smoke)
  tables[smoke ? 'withSmoke' : 'without'] = correction
  const others = all.filter((f) => f.smoke === smoke && !isOurs(f)).map((f) => ({ f, correction }))
  if (others.length > 0) tell('  others', others)
}
if (values.write) {
  const text = Object.entries(tables)
    .map(([name, table]) => `export const ${name}: Correction = ${JSON.stringify(table)}\n`)
    .join('\n')
  writeFileSync(
    values.write,
    `import type { Correction } from '../correction.ts'\n\n// Written by tests/bench/study/fit-main.ts from ${all.filter(isOurs).length} simulated firings. Not to be edited by hand.\n\n${text}`,
  )
}
