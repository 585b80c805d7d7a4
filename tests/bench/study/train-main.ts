// Teaches the learned judge: npm run train -- [--firings 1500] [--epochs 8] [--nets 3] [--out server/domain/estimate/learned/tables/judge.ts]
import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { Chance } from '../../../server/simulator/chance.ts'
import { fromPlain, fromWorld } from './classrooms.ts'
import { learn } from './learner.ts'
import { drawWish, flatWeights, type Lessons, type Simulated, teach } from './lessons.ts'

const { values } = parseArgs({
  options: {
    firings: { type: 'string', default: '1500' },
    epochs: { type: 'string', default: '8' },
    nets: { type: 'string', default: '3' },
    out: { type: 'string', default: 'server/domain/estimate/learned/tables/judge.ts' },
  },
})
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
  const lessons: Lessons = { signs: [], shares: [], weights: [] }
  const chance = new Chance(`lessons/${name}`)
  made.forEach((one, i) => {
    for (let turn = 0; turn < 2; turn++) teach(one, drawWish(chance), weights[i] ?? 1, chance, lessons)
  })
  const total = lessons.weights.reduce((a, b) => a + b, 0)
  lessons.weights = lessons.weights.map((weight) => (1000 * weight) / total)
  return lessons
}

const worlds = lessonsOf((n) => fromWorld(`learn-${n}`), 'worlds')
const plain = lessonsOf((n) => fromPlain(`learn-${n}`), 'plain')
const lessons: Lessons = {
  signs: [...worlds.signs, ...plain.signs],
  shares: [...worlds.shares, ...plain.shares],
  weights: [...worlds.weights, ...plain.weights],
}
console.log(`${lessons.signs.length} rows`)
const networks = Array.from({ length: Number(values.nets) }, (_, k) =>
  learn(lessons, Number(values.epochs), new Chance(`net-${k}`), (line) => console.log(`net ${k + 1}: ${line}`)),
)
writeFileSync(
  values.out,
  `import type { Network } from '../network.ts'\n\n// Made by \`npm run train\` (tests/bench/study/train-main.ts) from simulated firings only; not edited by hand.\n\n// prettier-ignore\nexport const judges: readonly Network[] = ${JSON.stringify(networks)}\n`,
)
