import type { Action } from '../../contract/actions.ts'
import type { RecordingHeader } from '../../contract/recording.ts'
import { Chance } from '../chance.ts'
import { quantise, straightLineC } from '../node/thermocouple.ts'
import { gridS } from './course.ts'
import type { Sampled } from './sampled.ts'
import type { Firing } from './world.ts'

/** Where and when a simulated firing stands; the node's name is its own. */
export interface Stage {
  title: string
  litMs: number
  node: string
  demo?: boolean
  /** In place of what the plan's person logged. */
  acts?: { atS: number; act: Action }[]
  /** Seconds after lighting at which the file ends. */
  untilS?: number
}

type Line = { atMs: number; line: Record<string, unknown> }

const iso = (ms: number) => new Date(ms).toISOString()

/** The birth document of the node that a plan describes (wire format, birth document). */
export function birthOf(firing: Firing, boot: number): Record<string, unknown> {
  const { probes } = firing.plan
  return {
    fw: '1.0.0',
    hw: 'esp32',
    boot,
    clock: probes.clock,
    buffer: 7200,
    channels: firing.sampled.channels.map(({ name, chip, lsb }) => {
      if (chip === 'ds18b20') return { n: name, u: 'Cel', sensor: 'ds18b20', linearised: true, period: gridS, lsb }
      const common = { n: name, u: 'Cel', sensor: 'K', period: gridS, lsb }
      if (probes.converter === 'max31856') return { ...common, converter: 'max31856', linearised: true }
      const cj = probes.converter === 'max31855' ? { cj: `${name}/cj` } : {}
      return { ...common, converter: 'max31855', linearised: false, ...cj }
    }),
  }
}

/** The records of one row, without identity. `t` is absolute seconds for a node with a clock, 0 for one without. */
export function rowOf(firing: Firing, sampled: Sampled, row: number, base: string, t: number): Record<string, unknown>[] {
  const { converter } = firing.plan.probes
  const records: Record<string, unknown>[] = []
  sampled.channels.forEach(({ name, chip, lsb, values }, k) => {
    const value = values[row]!
    const head = k === 0 ? { bn: base, bu: 'Cel' } : {}
    const tail = k === 0 ? { ut: gridS } : {}
    const straight = chip === 'thermocouple' && converter !== 'max31856'
    const cj = sampled.coldJunctionC[row]!
    if (typeof value === 'string') records.push({ ...head, n: name, vs: `fault:${value}`, t, ...tail })
    else records.push({ ...head, n: name, v: straight ? quantise(straightLineC(value, cj), lsb) : value, t, ...tail })
    if (straight && converter === 'max31855') records.push({ n: `${name}/cj`, v: cj, t })
  })
  return records
}

/** The lines of a recording, in order of arrival. */
export function recordingOf(firing: Firing, stage: Stage): Record<string, unknown>[] {
  const { plan, sampled } = firing
  const chance = new Chance(plan.seed).branch('wire')
  const topic = (kind: string) => `firing/1/${stage.node}/${kind}`
  const base = `${stage.node}/`
  const header: RecordingHeader = {
    recording: 1,
    title: stage.title,
    ...(stage.demo ? { demo: true } : {}),
    kiln: { volumeL: 200, cover: 'earth', way: plan.hands.letRunFromShare === null ? 'kept' : 'let-run' },
    ...(plan.record ? { charge: plan.record } : {}),
    roles: Object.fromEntries(sampled.channels.map(({ name }) => [`${base}${name}`, name])),
  }
  const boot = chance.whole(2, 60)
  const startMs = stage.litMs + sampled.fromS * 1000 - 4000
  const lines: Line[] = [
    { atMs: startMs + chance.between(100, 400), line: { topic: topic('info'), payload: birthOf(firing, boot), retained: false } },
  ]
  const kept: Record<string, unknown>[][] = []
  for (let row = 0; row < sampled.rows; row++) {
    const measuredMs = startMs + 4000 + row * gridS * 1000
    if (stage.untilS !== undefined && measuredMs > stage.litMs + stage.untilS * 1000) break
    const up = 4 + row * gridS
    const pack = [
      ...rowOf(firing, sampled, row, base, plan.probes.clock === 'ntp' ? measuredMs / 1000 : 0),
      { n: 'boot', u: 'count', v: boot },
      { n: 'seq', u: 'count', v: row + 1 },
      { n: 'up', u: 's', v: up },
    ]
    const atMs = measuredMs + chance.between(60, 700)
    if (sampled.fate[row] === 1) kept.push(pack)
    if (sampled.fate[row] !== 0) continue
    // the backlog comes first, oldest first
    for (const late of kept.splice(0)) lines.push({ atMs: atMs - 30, line: { topic: topic('backlog'), payload: late, retained: false } })
    lines.push({ atMs, line: { topic: topic('readings'), payload: pack, retained: false } })
  }
  for (const { atS, act } of stage.acts ?? actsOf(firing)) lines.push({ atMs: stage.litMs + atS * 1000, line: { ...act } })
  const inOrder = lines.map((line, i) => ({ ...line, i })).sort((a, b) => a.atMs - b.atMs || a.i - b.i)
  return [{ ...header }, ...inOrder.map(({ atMs, line }) => ({ at: iso(atMs), ...line }))]
}

/** What the person logged: always lighting and sealing, the rest by habit. */
export function actsOf(firing: Firing): { atS: number; act: Action }[] {
  const { hands } = firing.plan
  const done = firing.course.deeds
    .filter(({ deed }) => (deed !== 'refuel' && deed !== 'wet-condenser') || hands.logsFuelAndCloths)
    .map(({ atS, deed, mouth }) => ({ atS, act: { action: deed, ...(mouth ? { mouth } : {}) } as Action }))
  const seen = firing.looks.map(({ atS, smoke, drip }) => ({ atS, act: { action: 'observe', smoke, drip } as Action }))
  return [...done, ...seen].sort((a, b) => a.atS - b.atS)
}

/** The truth in the form of the scorer's files: times as UTC. */
export function truthFile(firing: Firing, litMs: number): Record<string, unknown> {
  const { truth, plan } = firing
  const time = (s: number | null) => (s === null ? null : iso(litMs + s * 1000))
  const spans = Object.fromEntries(Object.entries(truth.incidents).map(([kind, list]) => [kind, list.map(([a, b]) => [time(a), time(b)])]))
  const round = (x: number, digits: number) => Number(x.toFixed(digits))
  return {
    kind: plan.kind,
    family: plan.family,
    lit: iso(litMs),
    best: { from: time(truth.best.from), to: time(truth.best.to), value: round(truth.best.value, 3), goodKg: round(truth.best.goodKg, 3) },
    sealDue: time(truth.sealDue),
    sealed: time(truth.sealed),
    charcoalKg: round(truth.charcoalKg, 2),
    dryWoodKg: round(truth.dryWoodKg, 2),
    observes: plan.hands.logsLooks,
    smokeProbe: plan.probes.smoke,
    incidents: spans,
    hottestBelow: Object.fromEntries(Object.entries(truth.hottestBelow).map(([limit, s]) => [limit, time(s)])),
    minutes: truth.minutes.map((row) => row.map((kg) => round(kg, 5))),
  }
}
