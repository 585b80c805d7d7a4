// Teaches what the night tells.
// Three things: the odds of a leak (logistic regression: a night with a leak speaks for it from one to four hours after it began to burn, a
// tight one always against it), the bound of the hottest part, and the odds that it is hot or burns after all (small networks). Half of the
// nights leak, and as many again as `--hidden` says have a small fire far from the wall probe: of nights as they come one in a hundred has.
// They are none of those that `npm run sealed` judges. With --kept only the networks are taught, from the rows of an earlier run; with
// --only hot only the last of them. A fourth by itself, --only falls: how tight nights fall, and how kilns and the nights of a kiln differ in it,
// counted from four tight nights each of --kilns kilns.
import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { hottestOver } from '../../../server/domain/cooling/tables/hottest-over.ts'
import { hottestOverCore } from '../../../server/domain/cooling/tables/hottest-over-core.ts'
import type { Network } from '../../../server/domain/estimate/learned/network.ts'
import { Chance } from '../../../server/simulator/chance.ts'
import { asked } from '../asked.ts'
import { learn } from '../study/learner.ts'
import { gather, rowsOf } from './gather.ts'
import { boundTask, hotTask, secondLook, teachesBound } from './tasks.ts'
import { gatherFalls, teachFalls } from './teach-falls.ts'

const usage = `Usage: npm run sealed-teach -- [--count 6535] [--hidden 2608] [--first 20000000] [--kept FILE] [--epochs 14] [--nets 2] [--only hot|falls] [--kilns 360] [--core]
Teaches the odds of a leak, the bound of the hottest part and the odds that it is hot after all, and writes their tables.
--core: the two networks of a kiln with a probe in the middle of the charge, and their tables only.
--only falls: how tight nights fall; --kept a file of such nights, a line each.`
const { values } = asked(usage, () =>
  parseArgs({
    options: {
      count: { type: 'string', default: '6535' },
      hidden: { type: 'string', default: '2608' },
      first: { type: 'string', default: '20000000' },
      kept: { type: 'string' },
      epochs: { type: 'string', default: '14' },
      nets: { type: 'string', default: '2' },
      only: { type: 'string' },
      kilns: { type: 'string', default: '360' },
      core: { type: 'boolean', default: false },
    },
  }),
)
const tables = join(process.cwd(), 'server', 'domain', 'cooling', 'tables')
if (values.only === 'falls') {
  const file = values.kept ?? join('.build', 'sealed-falls.jsonl')
  if (values.kept === undefined) {
    rmSync(file, { force: true })
    gatherFalls(0, Number(values.kilns), file)
  }
  teachFalls(file, join(tables, 'tight-nights.ts'))
  process.exit()
}
const core = values.core ? 'all' : 'some'
const rowsFile = values.kept ?? join('.build', values.core ? 'sealed-core-rows.bin' : 'sealed-rows.bin')
if (values.kept === undefined) {
  const moments: { x: number[]; leaks: boolean }[] = []
  rmSync(rowsFile, { force: true })
  const first = Number(values.first)
  gather({ first, count: Number(values.count), which: 'often', core }, rowsFile, (x, leaks) => void moments.push({ x, leaks }))
  gather({ first: first + 5_000_000, count: Number(values.hidden), which: 'hidden', core }, rowsFile, () => undefined)
  if (!values.core) teachLeak(moments)
}
teachNetworks()

function teachNetworks(): void {
  const rows = rowsOf(rowsFile)
  const told = (name: string) => (line: string) => console.log(`${name}: ${line}`)
  const nets = Array.from({ length: Number(values.nets) }, (_, k) => k)
  const epochs = Number(values.epochs)
  const bounding = rows.filter(teachesBound)
  const bound =
    values.only === 'hot'
      ? values.core
        ? hottestOverCore
        : hottestOver
      : nets.map((k) =>
          learn(
            { signs: bounding.map((r) => r.signs) },
            boundTask(bounding),
            epochs,
            new Chance(`hottest-over-${k}`),
            told('hottest-over'),
          ),
        )
  if (values.core) write('hottest-over-core', 'hottestOverCore', bound)
  else write('hottest-over', 'hottestOver', bound)
  const second = secondLook(rows, bound)
  const hot = nets.map((k) =>
    learn({ signs: second.signs }, hotTask(second.rows), Math.round(0.7 * epochs), new Chance(`hot-after-all-${k}`), told('hot-after-all')),
  )
  if (values.core) write('hot-beside-core', 'hotBesideCore', hot)
  else write('hot-after-all', 'hotAfterAll', hot)
}

function write(file: string, name: string, networks: readonly Network[]): void {
  writeFileSync(
    join(tables, `${file}.ts`),
    `import type { Network } from '../../estimate/learned/network.ts'\n\n// Made by \`npm run sealed-teach\` from simulated nights only; not edited by hand.\n\n// prettier-ignore\nexport const ${name}: readonly Network[] = ${JSON.stringify(networks)}\n`,
  )
}

function teachLeak(rows: readonly { x: number[]; leaks: boolean }[]): void {
  const width = (rows[0]?.x.length ?? 0) + 1
  const weights = new Float64Array(width)
  const leaking = rows.filter((r) => r.leaks).length
  // both kinds weigh alike, leaks a third as much: one night in four leaks here, in a yard far fewer
  const weightOf = (leaks: boolean): number => (leaks ? (rows.length - leaking) / leaking / 3 : 1)
  const mean = (i: number): number => rows.reduce((sum, { x }) => sum + (x[i] ?? 0), 0) / rows.length
  const means = Array.from({ length: width - 1 }, (_, i) => mean(i))
  for (let round = 0; round < 15; round++) {
    const gradient = new Float64Array(width)
    const curve = Array.from({ length: width }, () => new Float64Array(width))
    for (const { x, leaks } of rows) {
      const z = [1, ...x.map((v, i) => v - (means[i] ?? 0))]
      const odds = z.reduce((sum, v, i) => sum + v * (weights[i] ?? 0), 0)
      const p = 1 / (1 + Math.exp(-Math.max(-30, Math.min(30, odds))))
      const w = weightOf(leaks)
      for (let i = 0; i < width; i++) {
        gradient[i] = (gradient[i] ?? 0) + w * ((leaks ? 1 : 0) - p) * (z[i] ?? 0)
        for (let k = 0; k < width; k++) (curve[i] as Float64Array)[k] = (curve[i]?.[k] ?? 0) + w * p * (1 - p) * (z[i] ?? 0) * (z[k] ?? 0)
      }
    }
    for (let i = 0; i < width; i++) {
      gradient[i] = (gradient[i] ?? 0) - 0.5 * (weights[i] ?? 0)
      ;(curve[i] as Float64Array)[i] = (curve[i]?.[i] ?? 0) + 0.5
    }
    solve(curve, gradient).forEach((step, i) => (weights[i] = (weights[i] ?? 0) + step))
  }
  const base = (weights[0] ?? 0) - means.reduce((sum, m, i) => sum + m * (weights[i + 1] ?? 0), 0)
  const text = `// Made by \`npm run sealed-teach\`: weights of the signs in ../leak.ts, in their order.
export const leakBase = ${base.toFixed(3)}
export const leakWeights: readonly number[] = [${Array.from(weights.slice(1), (w) => w.toFixed(3)).join(', ')}]
`
  writeFileSync(join(tables, 'leak-sign.ts'), text)
  console.log(`${rows.length} moments, ${leaking} of leaks\n${text}`)
}

/** Gauss without more ado: the matrix is symmetric and positive. */
function solve(a: Float64Array[], b: Float64Array): number[] {
  const n = b.length
  const m = a.map((row, i) => [...row, b[i] ?? 0])
  for (let i = 0; i < n; i++)
    for (let k = i + 1; k < n; k++) {
      const f = (m[k]?.[i] ?? 0) / (m[i]?.[i] ?? 1)
      for (let j = i; j <= n; j++) (m[k] as number[])[j] = (m[k]?.[j] ?? 0) - f * (m[i]?.[j] ?? 0)
    }
  const x = new Array<number>(n).fill(0)
  for (let i = n - 1; i >= 0; i--) {
    let sum = m[i]?.[n] ?? 0
    for (let j = i + 1; j < n; j++) sum -= (m[i]?.[j] ?? 0) * (x[j] ?? 0)
    x[i] = sum / (m[i]?.[i] ?? 1)
  }
  return x
}
