import { gridS } from '../firing/course.ts'
import { actsOf, birthOf, rowOf } from '../firing/recording.ts'
import type { Firing } from '../firing/world.ts'
import type { ChannelBirth, Reading, Script } from './script.ts'

/** The node of a simulated firing. Rows that never arrived in that world are left out here too. */
export function scriptOfWorld(firing: Firing): Script {
  const { sampled, plan } = firing
  const rows = Array.from({ length: sampled.rows }, (_, row) => ({
    atS: sampled.fromS + row * gridS,
    readings: rowOf(firing, sampled, row, '', 0).map(({ n, v, vs }) => ({
      n: String(n),
      ...(typeof v === 'number' ? { v } : {}),
      ...(typeof vs === 'string' ? { vs } : {}),
    })) satisfies Reading[],
  })).filter((_, row) => sampled.fate[row] !== 2)
  return {
    channels: birthOf(firing, 0)['channels'] as ChannelBirth[],
    clock: plan.probes.clock,
    periodS: gridS,
    rows,
    acts: actsOf(firing),
  }
}
