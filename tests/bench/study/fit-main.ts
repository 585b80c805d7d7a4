// Fits the learned correction of the estimator on rows that `study --rows` wrote, tells how it does on firings left out, and writes its table.
// node server/launch.mjs study-fit ROWS.jsonl [--write]
import { readFileSync, writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { hoursUntil } from '../../../server/domain/estimate/correction.ts'
import { defaultSettings } from '../../../server/domain/estimate/settings.ts'
import { fit } from './fit.ts'
import { captured, decide, type FiringRows } from './rows.ts'

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { write: { type: 'string' }, quick: { type: 'boolean', default: false } },
})
const all = positionals.flatMap((file) =>
  readFileSync(file, 'utf8')
    .split('\n')
    .filter(Boolean)
    .map((line) => JSON.parse(line) as FiringRows),
)
const isOurs = (f: FiringRows): boolean => !f.name.startsWith('p')
const mean = (a: number[]): number => a.reduce((x, y) => x + y, 0) / (a.length || 1)
const middle = (a: number[]): number => [...a].sort((x, y) => x - y)[Math.floor(a.length / 2)] ?? NaN

function tell(title: string, pairs: { f: FiringRows; correction: ReturnType<typeof fit> }[]): void {
  const scores = pairs.map(({ f, correction }) => captured(f, decide(f, correction, defaultSettings)))
  const seals = pairs.flatMap(({ f, correction }) => {
    const d = decide(f, correction, defaultSettings)
    return f.seal === null ? [] : [d.seal === null ? 999 : Math.abs(d.seal - f.seal) * 60]
  })
  const inside = (['start', 'stop', 'seal'] as const).map((call) => {
    const hits = pairs.flatMap(({ f, correction }) =>
      f.hours.flatMap((h, i) => {
        const real = f[call]
        if (real === null || h >= real || h < 0.4) return []
        const [low, , high] = hoursUntil(correction, call, Float64Array.from(f.x[i] ?? []))
        return [h + low <= real && real <= h + high ? 1 : 0]
      }),
    )
    return `${call} ${mean(hits).toFixed(2)}`
  })
  const starts = pairs.filter(
    ({ f, correction }) => f.kind === 'never-catches' && decide(f, correction, defaultSettings).start !== null,
  ).length
  console.log(
    `${title}: ${pairs.length} firings, captured ${mean(scores).toFixed(3)} (worst ${Math.min(...scores).toFixed(2)}), |seal| ${middle(seals).toFixed(0)} min, inside: ${inside.join(', ')}; starts in firings that never catch: ${starts}`,
  )
}

const tables: Record<string, ReturnType<typeof fit>> = {}
for (const smoke of [true, false]) {
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
