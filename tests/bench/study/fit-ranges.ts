import { type RangeForm, type RangeForms, rangeFrom, rangeSignCount } from '../../../server/domain/estimate/range.ts'
import type { FiringRows, RangeRow } from './rows.ts'
import { intervalScore } from './score.ts'

// Fits the forms that a range is told by, for the least interval score (Gneiting and Raftery 2007): width, and ten times what the truth
// lies outside. Every firing weighs alike. Eight signs a form, held near the plain mean of both opinions, so that a hundred firings do.

/** One range that was asked for, with the truth, hours from then, and its share of the weight. */
interface Asked {
  call: RangeRow['call']
  signs: readonly number[]
  real: number
  weight: number
}

const rounds = 350
const stepSize = 0.01
/** How strongly a weight is held to where it began, in spreads of its sign. */
const ridge = 0.05
/** The corners of the score are rounded over so many hours. */
const soft = 0.08
/** Beyond this score, minutes, a miss counts no more: nothing is to be learnt from a firing unlike all others. */
const hopeless = 1439
const outside = 10
const folds = 4

/** The mean of both opinions, four parts of the ensemble to six, its edges a little narrower: what was told before anything was fitted. */
const begin = {
  earliest: [0, 0.6, 0.4, -0.51, 0, -0.34, 0, 0],
  likely: [0, 0.6, 0.4, 0, 0, 0, 0, 0],
  latest: [0, 0.6, 0.4, 0, 0.51, 0, 0.34, 0],
} as const

interface Form {
  weights: Float64Array
  from: Float64Array
  first: Float64Array
  second: Float64Array
  gradient: Float64Array
}

const formFrom = (start: RangeForm, spreads: readonly number[]): Form => {
  const from = Float64Array.from(spreads, (spread, k) => (start[k] ?? 0) * spread)
  return {
    weights: from.slice(),
    from,
    first: new Float64Array(rangeSignCount),
    second: new Float64Array(rangeSignCount),
    gradient: new Float64Array(rangeSignCount),
  }
}

const above = (x: number): number => 1 / (1 + Math.exp(Math.min(30, Math.max(-30, -x / soft))))

function valueOf({ weights }: Form, z: Float64Array): number {
  let sum = 0
  for (let k = 0; k < rangeSignCount; k++) sum += (weights[k] as number) * (z[k] as number)
  return sum
}

/** A step of Adam (from memory), and the gradient begun anew. */
function descend(form: Form, round: number): void {
  const step = stepSize * (1 - (0.9 * round) / rounds)
  for (let k = 0; k < rangeSignCount; k++) {
    const slope = (form.gradient[k] as number) + ridge * ((form.weights[k] as number) - (form.from[k] as number))
    form.first[k] = 0.9 * (form.first[k] as number) + 0.1 * slope
    form.second[k] = 0.99 * (form.second[k] as number) + 0.01 * slope * slope
    const [m, v] = [(form.first[k] as number) / (1 - 0.9 ** round), (form.second[k] as number) / (1 - 0.99 ** round)]
    form.weights[k] = (form.weights[k] as number) - (step * m) / (Math.sqrt(v) + 1e-8)
  }
  form.gradient.fill(0)
}

/** The forms of one call. */
export function fitRanges(asked: readonly Asked[]): RangeForms {
  const total = asked.reduce((sum, { weight }) => sum + weight, 0)
  const spreads = Array.from(
    { length: rangeSignCount },
    (_, k) => Math.sqrt(asked.reduce((sum, { signs, weight }) => sum + (weight / total) * (signs[k] ?? 0) ** 2, 0)) + 1e-6,
  )
  const scaled = asked.map(({ signs }) => Float64Array.from(spreads, (spread, k) => (signs[k] ?? 0) / spread))
  const [earliest, likely, latest] = [formFrom(begin.earliest, spreads), formFrom(begin.likely, spreads), formFrom(begin.latest, spreads)]
  const add = ({ gradient }: Form, z: Float64Array, slope: number): void => {
    for (let k = 0; k < rangeSignCount; k++) gradient[k] = (gradient[k] as number) + slope * (z[k] as number)
  }
  for (let round = 1; round <= rounds; round++) {
    asked.forEach(({ real, weight }, i) => {
      const z = scaled[i] as Float64Array
      const share = weight / total
      const low = Math.max(0, valueOf(earliest, z))
      const high = Math.max(low, valueOf(latest, z))
      if (intervalScore(low, high, real) < hopeless) {
        if (low > 0) add(earliest, z, share * (outside * above(low - real) - 1))
        add(latest, z, share * (1 - outside * above(real - high)))
      }
      add(likely, z, share * (above(valueOf(likely, z) - real) - 0.5))
    })
    for (const form of [earliest, likely, latest]) descend(form, round)
  }
  const plain = ({ weights }: Form): number[] => Array.from(weights, (w, k) => Number((w / (spreads[k] ?? 1)).toFixed(4)))
  return { earliest: plain(earliest), likely: plain(likely), latest: plain(latest) }
}

/** Interval score of each asked range under these forms, minutes, and whether the truth lay inside. */
function judgeRange(forms: RangeForms, { signs, real }: Asked): { score: number; inside: boolean } {
  const [low, , high] = rangeFrom(forms, signs)
  return { score: intervalScore(low, high, real), inside: low <= real && real <= high }
}

/** What each firing asked; firings weigh alike, however often they were asked. */
function askedOf(rows: Pick<FiringRows, 'ranges' | 'start' | 'stop' | 'seal'>): Asked[] {
  const real = { 'start-collecting': rows.start, 'stop-collecting': rows.stop, seal: rows.seal }
  return rows.ranges.flatMap(({ call, at, signs }) => {
    const due = real[call]
    return due === null ? [] : [{ call, signs, real: due - at, weight: 1 / rows.ranges.length }]
  })
}

const fitCalls = (asked: readonly Asked[]): Record<RangeRow['call'], RangeForms> => {
  const of = (call: RangeRow['call']): RangeForms => fitRanges(asked.filter((one) => one.call === call))
  return { 'start-collecting': of('start-collecting'), 'stop-collecting': of('stop-collecting'), seal: of('seal') }
}

/** Score of firings, minutes, as mean and as median over them, and the share of truths inside. */
function judged(forms: (firing: number) => Record<RangeRow['call'], RangeForms>, firings: readonly Asked[][]): string {
  const every = firings.map((asked, i) => asked.map((one) => judgeRange(forms(i)[one.call], one)))
  const scores = every.map((one) => one.reduce((sum, { score }) => sum + score, 0) / one.length).sort((a, b) => a - b)
  const flat = every.flat()
  const inside = (100 * flat.filter((one) => one.inside).length) / flat.length
  const mean = scores.reduce((a, b) => a + b, 0) / scores.length
  return `interval score mean ${mean.toFixed(0)}, median ${(scores[Math.floor((scores.length - 1) / 2)] ?? NaN).toFixed(0)} min, inside ${inside.toFixed(0)} % of ${flat.length}`
}

/** Fits all calls, tells how the fit does on firings left out, and gives the text of the table. */
export function fitTable(rows: readonly FiringRows[], told: (line: string) => void): string {
  const asked = rows.map(askedOf).filter((one) => one.length > 0)
  const names = rows.filter((one) => askedOf(one).length > 0).map((one) => one.name)
  // both ways of playing a firing are left out together
  const kilns = [...new Set(names)]
  const fold = names.map((name) => kilns.indexOf(name) % folds)
  const plain = { 'start-collecting': begin, 'stop-collecting': begin, seal: begin }
  told(`${asked.length} firings, plain mean of both opinions: ${judged(() => plain, asked)}`)
  const left = Array.from({ length: folds }, (_, k) => fitCalls(asked.filter((_, i) => fold[i] !== k).flat()))
  told(`left out:    ${judged((i) => left[fold[i] ?? 0] ?? plain, asked)}`)
  const forms = fitCalls(asked.flat())
  told(`learnt from: ${judged(() => forms, asked)}`)
  const { 'start-collecting': start, 'stop-collecting': stop, seal } = forms
  return `import type { RangeForms } from '../range.ts'\n\n// Written by \`npm run study-fit -- ROWS --ranges TABLE\` from ${kilns.length} simulated firings. Not to be edited by hand.\n\nexport const ranges: Record<'start' | 'stop' | 'seal', RangeForms> = ${JSON.stringify({ start, stop, seal })}\n`
}
