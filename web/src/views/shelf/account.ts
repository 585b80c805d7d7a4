import type { Act, ActionName } from '../../../../server/contract/actions.ts'
import type { ActId, ChannelId, Charge, Ms, Output, Reason } from '../../../../server/contract/fold.ts'
import type { Curve, FiringSummary } from '../../../../server/contract/live.ts'
import { calls, type AlarmCode, type Call, type DripLook, type Priority, type Role } from '../../../../server/contract/vocabulary.ts'
import { logOf } from '../../lib/acts/log.ts'
import type { WholeFiring } from '../../lib/api/api.ts'

/** A call as the service gave it and as a person did it. */
export interface CallLine {
  call: Call
  givenAt: Ms | null
  because: Reason[]
  doneAt: Ms | null
  takenBackAt: Ms | null
}

const doneBy: Record<Call, ActionName> = {
  'stop-feeding': 'stop-feeding',
  'start-collecting': 'start-collecting',
  'stop-collecting': 'stop-collecting',
  seal: 'seal',
  open: 'crack',
}

/** Calls that were given or done, in the order of a firing. Of one that was given again, the last time before it was done counts. */
export function callLines(outputs: readonly Output[], acts: readonly Act[]): CallLine[] {
  const standing = logOf(acts)
    .filter((line) => !line.takenBack)
    .map((line) => line.act)
  return calls.flatMap((call) => {
    const told = outputs.filter((output) => output.kind === 'call').filter((output) => output.call === call)
    const done = standing.findLast(({ act }) => act.action === doneBy[call])?.doneAt ?? null
    const given = told.filter((output) => output.state === 'due')
    const last = given.findLast((output) => done === null || output.at <= done) ?? given[0]
    if (!last && done === null) return []
    const back = told.find((output) => output.state === 'withdrawn' && last !== undefined && output.at >= last.at)
    return [{ call, givenAt: last?.at ?? null, because: last?.because ?? [], doneAt: done, takenBackAt: back?.at ?? null }]
  })
}

export interface AlarmLine {
  alarm: AlarmCode
  channel: ChannelId | undefined
  priority: Priority
  from: Ms
  /** When its cause was over; null where the firing ended first. */
  to: Ms | null
  hushedAt: Ms | null
  because: Reason[]
}

const over = ['normal', 'returned-unacknowledged', 'latched-unacknowledged', 'latched-acknowledged', 'suppressed', 'out-of-service']

export function alarmLines(outputs: readonly Output[]): AlarmLine[] {
  const lines: AlarmLine[] = []
  for (const output of outputs) {
    if (output.kind !== 'alarm') continue
    const open = lines.findLast((line) => line.alarm === output.alarm && line.channel === output.channel)
    if (output.state === 'unacknowledged' && (!open || open.to !== null)) {
      const { alarm, channel, priority, at, because } = output
      lines.push({ alarm, channel, priority, from: at, to: null, hushedAt: null, because })
    } else if (open) {
      if (over.includes(output.state)) open.to ??= output.at
      if (output.state === 'acknowledged') open.hushedAt ??= output.at
    }
  }
  return lines
}

export interface BlindSpan {
  of: Role
  from: Ms
  to: Ms
}

const shortestBlindMs = 60_000

/** Stretches in which a probe that was heard before gave no number, to the end if it never came back; the service breaks the line there. */
export function blindSpans({ t, series }: Pick<Curve, 't' | 'series'>): BlindSpan[] {
  return series.flatMap(({ key, values }) => {
    if (key === 'smoke-estimated') return []
    const spans: BlindSpan[] = []
    let last: number | null = null
    values.forEach((value, index) => {
      if (value === null && index < values.length - 1) return
      const [from, to] = [t[last ?? index] ?? 0, t[index] ?? 0]
      if (last !== null && index - last > 1 && to - from >= shortestBlindMs) spans.push({ of: key, from, to })
      last = index
    })
    return spans
  })
}

export interface Glass {
  number: number
  at: Ms
  drip: DripLook | undefined
  /** The act that its photograph is named by; null where none was taken. */
  photo: ActId | null
}

export function glassesOf(acts: readonly Act[]): Glass[] {
  return logOf(acts)
    .filter((line) => !line.takenBack)
    .flatMap(({ act: { act, doneAt }, first }) =>
      act.action === 'glass' ? [{ number: act.number, at: doneAt, drip: act.drip, photo: act.photo ? first.id : null }] : [],
    )
    .sort((a, b) => a.at - b.at)
}

/** The first lighting that stands in the log, else where kindling was seen, else the beginning. */
export function litAtOf({ acts, phases, startedAt }: Pick<WholeFiring, 'acts' | 'phases' | 'startedAt'>): Ms {
  const lit = logOf(acts).findLast((line) => !line.takenBack && line.act.act.action === 'light')
  return lit?.act.doneAt ?? phases.find((span) => span.phase !== 'idle')?.from ?? startedAt
}

/** As loaded by the log, else by the settings of the kiln. */
export function chargeOf({ acts, config }: Pick<WholeFiring, 'acts' | 'config'>): Charge {
  const load = logOf(acts).find((line) => !line.takenBack && line.act.act.action === 'load')?.act.act
  if (load?.action !== 'load') return config.charge
  const { massKg, moisturePct, pieceMm } = load
  return {
    ...config.charge,
    ...(massKg === undefined ? {} : { massKg }),
    ...(moisturePct === undefined ? {} : { moisturePct }),
    ...(pieceMm === undefined ? {} : { pieceMm }),
  }
}

export function nameOfFiring({ title, kilnName, kiln }: Pick<FiringSummary, 'title' | 'kilnName' | 'kiln'>): string {
  return title || kilnName || kiln
}

/** The highest value of a series; null where there is none. */
export function topOf(curve: Pick<Curve, 'series'>, ...keys: (Role | 'smoke-estimated')[]): number | null {
  for (const key of keys) {
    const values = curve.series.find((one) => one.key === key)?.values.filter((value) => value !== null) ?? []
    if (values.length > 0) return values.reduce((most, value) => Math.max(most, value), -Infinity)
  }
  return null
}
