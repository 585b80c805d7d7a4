import type { Firing } from '../../../server/simulator/firing/world.ts'
import { gridS } from '../../../server/simulator/firing/course.ts'
import { channelNames } from '../../../server/simulator/firing/sampled.ts'
import { dripClasses } from '../../../server/simulator/firing/truth.ts'

/** Columns of a grid file, in order: what the probes said (NaN: no such probe, fault, or not arrived live), then what was true. */
export const gridColumns = [
  ...channelNames,
  'trueSmoke',
  'trueOutlet',
  'trueWall',
  'trueHottest',
  'kgS',
  'acidShare',
  'tarShare',
  'charShare',
] as const

/** Little-endian float32, column after column, `rows` each; row i stands at `fromS + i * stepS` seconds after lighting. */
export function gridOf(firing: Firing): {
  about: { fromS: number; stepS: number; rows: number; columns: readonly string[] }
  columns: Uint8Array
} {
  const { sampled, course } = firing
  const { rows, fromS } = sampled
  const lead = rows - course.mouth.length
  const out = new Float32Array(rows * gridColumns.length).fill(NaN)
  for (const { name, values } of sampled.channels) {
    const at = channelNames.indexOf(name) * rows
    values.forEach((value, i) => {
      if (typeof value === 'number' && sampled.fate[i] === 0) out[at + i] = value
    })
  }
  const classes = dripClasses(course)
  const truths = [
    course.smoke,
    course.outlet,
    course.wall,
    course.hottest,
    classes.map((row) => row.kgS),
    classes.map((row) => row.acid),
    classes.map((row) => row.tar),
    course.charred,
  ]
  truths.forEach((column, k) => {
    const at = (channelNames.length + k) * rows + lead
    out.set(column, at)
  })
  return { about: { fromS, stepS: gridS, rows, columns: gridColumns }, columns: new Uint8Array(out.buffer) }
}
