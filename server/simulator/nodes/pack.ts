import type { Reading } from './script.ts'

/** Who says it: a boot number new at every start, a count of packs, and the seconds since the start. */
export interface Identity {
  boot: number
  seq: number
  upS: number
}

/** One SenML pack (RFC 8428) as the wire format asks for it. `t` is absolute for a node with a clock, 0 for one without. */
export function packOf(
  base: string,
  readings: readonly Reading[],
  identity: Identity,
  t: number,
  periodS: number,
): Record<string, unknown>[] {
  const records: Record<string, unknown>[] = readings.map((reading, i) => ({
    ...(i === 0 ? { bn: base, bu: 'Cel' } : {}),
    ...reading,
    t,
    ...(i === 0 ? { ut: periodS } : {}),
  }))
  // an empty row still says that the node lives
  const head = records.length === 0 ? { bn: base } : {}
  return [
    ...records,
    { ...head, n: 'boot', u: 'count', v: identity.boot },
    { n: 'seq', u: 'count', v: identity.seq },
    { n: 'up', u: 's', v: Math.round(identity.upS * 1000) / 1000 },
  ]
}
