import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import type { Network } from '../../../server/domain/estimate/learned/network.ts'
import { Chance } from '../../../server/simulator/chance.ts'
import { asked } from '../asked.ts'
import { fromPlain, fromWorld } from './classrooms.ts'
import { learn } from './learner.ts'
import { classesTask, horizonTask } from './tasks.ts'
import { drawWish, flatWeights, type Lessons, type Simulated, teach } from './lessons.ts'

const usage = `Usage: npm run train -- [--firings 1500] [--epochs 8] [--nets 3] [--only judge|horizon]
Teaches the learned judge and the learned forecaster, and writes their tables.`
const { values } = asked(usage, () =>
  parseArgs({
    options: {
      firings: { type: 'string', default: '1500' },
      epochs: { type: 'string', default: '8' },
      nets: { type: 'string', default: '3' },
      only: { type: 'string' },
    },
  }),
)
const firings = Number(values.firings)

/** Half of the weight to each kind of world, so that no simulator's habits rule. */
function lessonsOf(make: (n: number) => Simulated | null, name: string): Lessons {
  const made: Simulated[] = []
  for (let n = 1; made.length < firings && n < firings * 5; n++) {
    const one = make(n)
    if (one) made.push(one)
    if (n % 200 === 0) console.log(`${name}: ${made.length} firings of ${n}`)
  }
  const weights = flatWeights(made.map((one) => (one.best ? one.best.toMinute / 60 : null)))
  const lessons: Lessons = { signs: [], shares: [], weights: [], until: [], firing: [] }
  const chance = new Chance(`lessons/${name}`)
  made.forEach((one, i) => {
    for (let turn = 0; turn < 2; turn++) teach(one, drawWish(chance), weights[i] ?? 1, chance, lessons)
  })
  const total = lessons.weights.reduce((a, b) => a + b, 0)
  lessons.weights = lessons.weights.map((weight) => (1000 * weight) / total)
  // each kind of world weighs alike
  const all = lessons.firing.reduce((a, b) => a + b, 0)
  lessons.firing = lessons.firing.map((weight) => (1000 * weight) / all)
  return lessons
}

const worlds = lessonsOf((n) => fromWorld(`learn-${n}`), 'worlds')
const plain = lessonsOf((n) => fromPlain(`learn-${n}`), 'plain')
const lessons: Lessons = {
  signs: [...worlds.signs, ...plain.signs],
  shares: [...worlds.shares, ...plain.shares],
  weights: [...worlds.weights, ...plain.weights],
  until: [...worlds.until, ...plain.until],
  firing: [...worlds.firing, ...plain.firing],
}
console.log(`${lessons.signs.length} rows`)

function write(name: string, networks: readonly Network[]): void {
  writeFileSync(
    `server/domain/estimate/learned/tables/${name}.ts`,
    `import type { Network } from '../network.ts'\n\n// Made by \`npm run train\` (tests/bench/study/train-main.ts) from simulated firings only; not edited by hand.\n\n// prettier-ignore\nexport const ${name}s: readonly Network[] = ${JSON.stringify(networks)}\n`,
  )
}

for (const name of ['judge', 'horizon'] as const) {
  if (values.only !== undefined && values.only !== name) continue
  const task = name === 'judge' ? classesTask(lessons) : horizonTask(lessons)
  const networks = Array.from({ length: Number(values.nets) }, (_, k) =>
    learn(lessons, task, Number(values.epochs), new Chance(`net-${k}`), (line) => console.log(`${name} ${k + 1}: ${line}`)),
  )
  write(name, networks)
}
