// Plays simulated firings through the rules alone and tells what the alarms are worth.
// npm run bench:alarms -- FOLDER... [--each] [--curve]     FOLDER as `npm run worlds -- FOLDER` writes it, or any recordings with their truth
import { parseArgs } from 'node:util'
import { makeKilnFold } from '../../../server/domain/firing/fold.ts'
import { alarmTable } from '../../../server/domain/alarms/tables/definitions.ts'
import { score, type Raised, type Score } from './score.ts'
import { VariantBoard, variants } from './variants.ts'
import { playRecorded, readHappened, recordedNames } from './recorded.ts'
import { families, readWorld, worldNames, type Family, type Happened, type World } from './world.ts'

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { each: { type: 'boolean', default: false }, curve: { type: 'boolean', default: false } },
})
if (positionals.length === 0) {
  console.error(
    'Usage: npm run bench:alarms -- FOLDER... [--each] [--curve], or --latency\nFOLDER: npm run worlds -- FOLDER --as grid --count 60',
  )
  process.exit(2)
}

type Sum = Record<Family, Score>
const nothing = (): Sum => ({
  condenserDry: { happened: 0, told: 0, false: 0 },
  fireDying: { happened: 0, told: 0, false: 0 },
  airLeak: { happened: 0, told: 0, false: 0 },
})
function add(to: Sum, one: Sum): void {
  for (const family of families) {
    to[family].happened += one[family].happened
    to[family].told += one[family].told
    to[family].false += one[family].false
  }
}

function playWorld(world: World, boards: readonly VariantBoard[]): Raised[] {
  const fold = rules(boards)
  let state = fold.start(world.config)
  const raised: Raised[] = []
  for (const input of world.inputs) {
    const result = fold.step(state, input)
    state = result.state
    for (const output of result.outputs)
      if (output.kind === 'alarm' && output.state === 'unacknowledged')
        raised.push({ alarm: output.alarm, atMs: output.at - world.litMs, because: output.because[0]?.code ?? '' })
  }
  return raised
}

const rules = (boards: readonly VariantBoard[]) =>
  makeKilnFold<never>(null, {
    table: alarmTable,
    listener: boards.length === 0 ? null : (at, phase, telling) => boards.forEach((board) => board.hear(at, phase, telling)),
  })

function* firingsIn(folder: string): Generator<{ happened: Happened; play: (boards: readonly VariantBoard[]) => Raised[] }> {
  const grids = worldNames(folder)
  for (const name of grids) {
    const world = readWorld(folder, name)
    yield { happened: world, play: (boards) => playWorld(world, boards) }
  }
  for (const name of recordedNames(folder)) {
    if (grids.includes(name)) continue
    const happened = readHappened(folder, name)
    yield { happened, play: (boards) => playRecorded(folder, happened, rules(boards)) }
  }
}

const all = nothing()
const byVariant = variants.map(() => nothing())
const byAlarm = new Map<string, number>()
let firings = 0
let alarms = 0
for (const folder of positionals)
  for (const { happened: world, play } of firingsIn(folder)) {
    const boards = values.curve ? variants.map((variant) => new VariantBoard(variant, world.litMs)) : []
    const raised = play(boards)
    const one = score(world, raised)
    add(all, one)
    boards.forEach((board, i) => add(byVariant[i] ?? nothing(), score(world, board.raised)))
    for (const { alarm } of raised) byAlarm.set(alarm, (byAlarm.get(alarm) ?? 0) + 1)
    firings++
    alarms += raised.length
    if (values.each) {
      const h = (ms: number): string => (ms / 3_600_000).toFixed(2)
      const wrong = families.filter((family) => one[family].told < one[family].happened || one[family].false > 0)
      const spans = families.flatMap((family) => world.incidents[family].map(([from, to]) => `${family} ${h(from)}-${h(to)}`))
      console.log(
        `${world.name} ${world.kind} sealed ${h(world.sealedMs)} | ${spans.join(', ')} | ${raised.map((r) => `${r.alarm} ${h(r.atMs)} ${r.because ?? ''}`).join(', ')}${wrong.length > 0 ? ` << ${wrong.join(' ')}` : ''}`,
      )
    }
  }

const line = (name: string, sum: Sum): string =>
  `${name.padEnd(26)}${families.map((f) => `${f} ${sum[f].told}/${sum[f].happened} false ${(sum[f].false / firings).toFixed(2)}`.padEnd(32)).join('')}all ${families.reduce((n, f) => n + sum[f].told, 0)}/${families.reduce((n, f) => n + sum[f].happened, 0)} false ${(families.reduce((n, f) => n + sum[f].false, 0) / firings).toFixed(2)} a firing`
console.log(line(`${firings} firings`, all))
console.log(
  `alarms a firing ${(alarms / firings).toFixed(2)}: ${[...byAlarm]
    .sort((a, b) => b[1] - a[1])
    .map(([alarm, n]) => `${alarm} ${(n / firings).toFixed(2)}`)
    .join(', ')}`,
)
if (values.curve) variants.forEach((variant, i) => console.log(line(variant.name, byVariant[i] ?? nothing())))
