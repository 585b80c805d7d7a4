import type { InsideSlice } from '../../../server/contract/fold.ts'
import type { ChannelView, Curve, KilnView, SiteView } from '../../../server/contract/live.ts'
import type { Role } from '../../../server/contract/vocabulary.ts'

/** 08:31 of an invented day; every scene counts from here. */
export const noon = Date.UTC(2026, 9, 14, 8, 31)
export const minute = 60_000
export const hour = 3_600_000

export function channel(role: Role, value: number | null, slopePerH: number | null = null, more: Partial<ChannelView> = {}): ChannelView {
  return {
    channel: `yard/n1/${role}`,
    role,
    value,
    quality: 'good',
    t: noon - 2000,
    heard: 'fresh',
    periodS: 10,
    slopePerH,
    slopeSd: slopePerH === null ? null : 1,
    error: 2,
    ...more,
  }
}

/** Charcoal first, then breaking down, drying, wet; the borders are not sure. */
export function inside(charcoalTo: number, breakingTo: number, dryingTo: number): InsideSlice[] {
  const soft = (x: number, edge: number): number => 1 / (1 + Math.exp((x - edge) * 40))
  return Array.from({ length: 20 }, (_, index) => {
    const x = (index + 0.5) / 20
    const charcoal = charcoalTo <= 0 ? 0 : soft(x, charcoalTo)
    const breaking = (breakingTo <= 0 ? 0 : soft(x, breakingTo)) - charcoal
    const drying = Math.max(0, (dryingTo <= 0 ? 0 : soft(x, dryingTo)) - charcoal - Math.max(0, breaking))
    const b = Math.max(0, breaking)
    return [Math.max(0, 1 - charcoal - b - drying), drying, b, charcoal]
  })
}

export function kiln(change: { [K in keyof KilnView]?: Partial<KilnView[K]> | KilnView[K] } = {}): KilnView {
  const base: KilnView = {
    firing: {
      kiln: 'kiln-1',
      kilnName: 'Bird kiln',
      way: 'kept',
      firing: 'f-7',
      litAt: noon - 81 * minute,
      litInferred: false,
      armedAt: noon - 89 * minute,
      collectingSince: null,
      sealedAt: null,
      phase: 'drying',
      phaseSince: noon - 50 * minute,
      because: [],
      ribbon: [
        { phase: 'kindling', from: noon - 81 * minute, to: noon - 50 * minute },
        { phase: 'drying', from: noon - 50 * minute, to: null },
      ],
      acts: [
        { id: 'a1', at: noon - 81 * minute, doneAt: noon - 81 * minute, act: { action: 'light' } },
        { id: 'a2', at: noon - 38 * minute, doneAt: noon - 38 * minute, act: { action: 'refuel' } },
        { id: 'a3', at: noon - 8 * minute, doneAt: noon - 9 * minute, act: { action: 'wet-condenser' } },
      ],
      lastWettedAt: noon - 9 * minute,
      lastFedAt: noon - 38 * minute,
      bottle: { number: 1, litres: null, sizeL: 5, level: null },
      charge: { massKg: 62, moisturePct: 24 },
      band: { startC: 80, stopC: 150 },
      sign: 'bird',
    },
    channels: [channel('firebox', 724), channel('wall', 160, 70), channel('smoke', 69, 22), channel('outlet', 34, 3)],
    command: {
      do: 'wait',
      since: noon - 81 * minute,
      next: { call: 'start-collecting', range: { earliest: noon + 39 * minute, likely: noon + 55 * minute, latest: noon + 79 * minute } },
      notBefore: null,
      because: [],
      unless: [],
      sure: 'middle',
      doubts: [],
    },
    calls: [],
    alarms: [],
    estimate: {
      smokeC: 70,
      smokeSd: 6,
      acidShare: 0.02,
      acidSd: 0.01,
      tarShare: 0,
      tarSd: 0.01,
      condensateKgH: 1.4,
      condensateKg: 0.8,
      charShare: 0.08,
      charSd: 0.03,
      inside: inside(0.1, 0.24, 0.66),
      from: 'ensemble',
    },
    forecast: {
      at: noon,
      smoke: Array.from({ length: 25 }, (_, i) => ({
        t: noon + i * 6 * minute,
        low: 66 + i * 1.6,
        middle: 69 + i * 2.4,
        high: 72 + i * 3.4,
      })),
    },
    hints: [{ hint: 'feed-fire', by: noon + 11 * minute, because: [] }],
    hands: { next: 'feed-fire', at: noon + 11 * minute },
  }
  const merged: Record<string, unknown> = { ...base }
  for (const [part, value] of Object.entries(change)) {
    const old = merged[part]
    merged[part] = Array.isArray(value) || value === null || typeof old !== 'object' || old === null ? value : { ...old, ...value }
  }
  return merged as unknown as KilnView
}

export function site(change: Partial<SiteView> = {}): SiteView {
  return {
    nodes: [
      {
        node: 'yard/n1',
        state: 'ready',
        lastHeard: noon - 2000,
        boot: 3,
        clock: 'ntp',
        hardware: 'esp32',
        channels: ['yard/n1/firebox', 'yard/n1/wall', 'yard/n1/outlet'],
        samples: 1460,
        duplicates: 0,
        conflicts: 0,
        refused: {},
      },
    ],
    refused: {},
    health: [],
    demo: null,
    ...change,
  }
}

/** A made-up curve that ends where the view's probes stand, one row a minute, with a gap of ten minutes. */
export function curve(view: KilnView): Curve {
  const to = noon
  const from = view.firing.litAt ?? to - hour
  const t: number[] = []
  for (let at = from; at <= to; at += minute) t.push(at)
  const shapes: Partial<Record<Role, (share: number) => number>> = {
    firebox: (share) => 1 - Math.exp(-share * 12) * 0.97,
    wall: (share) => 0.1 + 0.9 * share,
    smoke: (share) => 0.25 + 0.75 * Math.sqrt(share),
    outlet: (share) => 0.6 + 0.4 * share,
  }
  const line = (key: Curve['series'][number]['key'], end: number): Curve['series'][number] => {
    const shape = shapes[key === 'smoke-estimated' ? 'smoke' : key] ?? ((): number => 1)
    return {
      key,
      values: t.map((at) =>
        at - from > 40 * minute && at - from < 50 * minute ? null : end * shape((at - from) / Math.max(1, to - from)),
      ),
    }
  }
  const series = view.channels.flatMap((one) => (one.value === null ? [] : [line(one.role, one.value)]))
  if (view.estimate && !view.channels.some((one) => one.role === 'smoke')) series.push(line('smoke-estimated', view.estimate.smokeC))
  const marks = view.firing.acts.map((act) => ({ t: act.doneAt, kind: 'act' as const, code: act.act.action }))
  return { from, to, t, series, marks, ribbon: view.firing.ribbon }
}
