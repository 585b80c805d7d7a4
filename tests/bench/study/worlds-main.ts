import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { gzipSync } from 'node:zlib'
import type { Family, Kind } from '../../../server/simulator/firing/plan.ts'
import { families, kinds } from '../../../server/simulator/firing/plan.ts'
import { actsOf, recordingOf, truthFile } from '../../../server/simulator/firing/recording.ts'
import { makeFiring } from '../../../server/simulator/firing/world.ts'
import { asked } from '../asked.ts'
import { gridOf } from './worlds-grid.ts'

const usage = `Usage: npm run worlds -- FOLDER [--count 100] [--first 1] [--family zones|pieces] [--kind KIND] [--as grid|recording|both]
Writes simulated firings into a folder, for studies of the estimator.
KIND: ${kinds.join(', ')}`
const { values, positionals } = asked(usage, () =>
  parseArgs({
    allowPositionals: true,
    options: {
      count: { type: 'string', default: '100' },
      first: { type: 'string', default: '1' },
      family: { type: 'string' },
      kind: { type: 'string' },
      as: { type: 'string', default: 'both' },
    },
  }),
)
const [folder] = positionals
const isFamily = (name: string): name is Family => (families as readonly string[]).includes(name)
const isKind = (name: string): name is Kind => (kinds as readonly string[]).includes(name)
const { family, kind } = values
if (
  !folder ||
  (family !== undefined && !isFamily(family)) ||
  (kind !== undefined && !isKind(kind)) ||
  !['grid', 'recording', 'both'].includes(values.as)
) {
  console.error(usage)
  process.exit(2)
}
mkdirSync(folder, { recursive: true })
const first = Number(values.first)
for (let n = first; n < first + Number(values.count); n++) {
  const firing = makeFiring(`world-${n}`, { ...(family === undefined ? {} : { family }), ...(kind === undefined ? {} : { kind }) })
  const litMs = Date.UTC(2026, 2, 1, 6) + (n % 200) * 86_400_000
  const name = join(folder, `firing-${String(n).padStart(5, '0')}`)
  writeFileSync(`${name}.truth.json`, JSON.stringify(truthFile(firing, litMs)))
  if (values.as !== 'grid') {
    const lines = recordingOf(firing, { title: `Simulated firing ${n}`, litMs, node: 'yard/n1', demo: true })
    writeFileSync(`${name}.jsonl.gz`, gzipSync(lines.map((line) => JSON.stringify(line)).join('\n') + '\n', { level: 5 }))
  }
  if (values.as !== 'recording') {
    const { about, columns } = gridOf(firing)
    writeFileSync(`${name}.f32`, columns)
    writeFileSync(
      `${name}.grid.json`,
      JSON.stringify({ ...about, litMs, acts: actsOf(firing), record: firing.plan.record, plan: firing.plan }),
    )
  }
}
