import type { KilnView } from '../../../server/contract/live.ts'
import { channel, hour, inside, kiln, minute, noon } from './kiln.ts'

/** A charge of which all but the chimney's end is charcoal. */
const charred: KilnView['estimate'] = {
  smokeC: 240,
  smokeSd: 9,
  acidShare: 0.04,
  acidSd: 0.01,
  tarShare: 0.21,
  tarSd: 0.04,
  condensateKgH: 0.9,
  condensateKg: 13.2,
  charShare: 0.86,
  charSd: 0.04,
  inside: inside(0.82, 0.96, 1.2),
  from: 'ensemble',
}

/** The bottle was changed so many minutes ago. */
const swapped = (ago: number, litres: number): KilnView['firing']['acts'][number] => ({
  id: 'a9',
  at: noon - ago * minute,
  doneAt: noon - ago * minute,
  act: { action: 'swap-bottle', litres },
})

/** Lit so many minutes ago; a phase begins at each of the later numbers. */
function ribbonOf(kindling: number, drying: number, vinegar: number, tar?: number, clearing?: number): KilnView['firing']['ribbon'] {
  const starts = [
    { phase: 'kindling' as const, ago: kindling },
    { phase: 'drying' as const, ago: drying },
    { phase: 'vinegar' as const, ago: vinegar },
    ...(tar === undefined ? [] : [{ phase: 'tar' as const, ago: tar }]),
    ...(clearing === undefined ? [] : [{ phase: 'clearing' as const, ago: clearing }]),
  ]
  return starts.map(({ phase, ago }, index) => {
    const next = starts[index + 1]
    return { phase, from: noon - ago * minute, to: next ? noon - next.ago * minute : null }
  })
}

/** Moments of a firing, as the service would tell them. Invented numbers; each screen must agree with itself. */
export const scenes = {
  'before-lighting': kiln({
    firing: { firing: null, litAt: null, armedAt: null, phase: 'idle', ribbon: [], acts: [], lastWettedAt: null },
    command: { do: 'none', next: null, sure: 'high' },
    channels: [channel('firebox', 24), channel('wall', 23), channel('smoke', 24), channel('outlet', 24)],
    estimate: null,
    forecast: null,
    hands: null,
    hints: [],
  }),
  waiting: kiln(),
  'three-probes': kiln({ channels: [channel('firebox', 724), channel('wall', 160, 70), channel('outlet', 34, 3)] }),
  collecting: kiln({
    firing: {
      phase: 'vinegar',
      collectingSince: noon - 140 * minute,
      litAt: noon - 241 * minute,
      bottle: { number: 2, litres: 4.6, sizeL: 5, level: { low: 1.2, high: 2.3 } },
      acts: [swapped(50, 4.6)],
      ribbon: [
        { phase: 'kindling', from: noon - 241 * minute, to: noon - 210 * minute },
        { phase: 'drying', from: noon - 210 * minute, to: noon - 150 * minute },
        { phase: 'vinegar', from: noon - 150 * minute, to: null },
      ],
    },
    channels: [channel('firebox', 774), channel('wall', 391, 30), channel('outlet', 38, 2)],
    command: {
      do: 'collect',
      next: { call: 'stop-collecting', range: { earliest: noon + 70 * minute, likely: noon + 100 * minute, latest: noon + 140 * minute } },
      sure: 'middle',
    },
    estimate: {
      smokeC: 129,
      smokeSd: 9,
      acidShare: 0.09,
      tarShare: 0.02,
      condensateKgH: 2.1,
      condensateKg: 6.4,
      charShare: 0.5,
      charSd: 0.05,
      acidSd: 0.01,
      tarSd: 0.01,
      inside: inside(0.45, 0.6, 0.9),
      from: 'ensemble',
    },
    hands: { next: 'wet-cloths', at: noon + 18 * minute },
  }),
  'cloths-dry': kiln({
    firing: {
      phase: 'vinegar',
      collectingSince: noon - 140 * minute,
      litAt: noon - 241 * minute,
      lastWettedAt: noon - 41 * minute,
      bottle: { number: 2, litres: 4.6, sizeL: 5, level: { low: 0.5, high: 1 } },
      acts: [swapped(50, 4.6)],
      ribbon: ribbonOf(241, 210, 150),
    },
    estimate: {
      ...charred,
      smokeC: 129,
      acidShare: 0.09,
      tarShare: 0.02,
      condensateKg: 6.4,
      charShare: 0.5,
      inside: inside(0.45, 0.6, 0.9),
    },
    hints: [{ hint: 'wet-cloths', by: noon, because: [] }],
    hands: { next: 'wet-cloths', at: noon },
    forecast: null,
    channels: [channel('firebox', 774), channel('wall', 391, 30), channel('outlet', 71, 40)],
    command: {
      do: 'collect',
      next: { call: 'stop-collecting', range: { earliest: noon + 70 * minute, likely: noon + 100 * minute, latest: noon + 140 * minute } },
    },
    alarms: [
      {
        alarm: 'condenser-hot',
        state: 'unacknowledged',
        priority: 'warning',
        since: noon - 40_000,
        firstOut: true,
        because: [{ code: 'outlet-over', value: 71, limit: 55, forS: 40, channel: 'yard/n1/outlet' }],
        shelvedUntil: null,
      },
    ],
  }),
  'start-due': kiln({
    firing: { phase: 'vinegar' },
    channels: [channel('firebox', 741), channel('wall', 182, 70), channel('smoke', 83, 24), channel('outlet', 35, 3)],
    command: { do: 'start-collecting', next: null, because: [{ code: 'smoke-over', value: 83, limit: 80, forS: 600 }], sure: 'middle' },
    calls: [{ call: 'start-collecting', state: 'due', since: noon - minute, because: [], forecast: null }],
  }),
  'drip-turning': kiln({
    firing: {
      phase: 'tar',
      collectingSince: noon - 240 * minute,
      litAt: noon - 341 * minute,
      bottle: { number: 3, litres: 4.8, sizeL: 5, level: { low: 0.8, high: 1.6 } },
      acts: [swapped(80, 4.8)],
      ribbon: ribbonOf(341, 300, 250, 9),
    },
    estimate: { ...charred, smokeC: 150, condensateKg: 11.8, charShare: 0.7, inside: inside(0.62, 0.84, 1.1) },
    forecast: null,
    channels: [channel('firebox', 760), channel('wall', 430, 12), channel('smoke', 152, 35), channel('outlet', 40, 2)],
    command: { do: 'stop-collecting', next: null, because: [{ code: 'seen-drip-dark' }], sure: 'high' },
    calls: [{ call: 'stop-collecting', state: 'due', since: noon - minute, because: [{ code: 'seen-drip-dark' }], forecast: null }],
  }),
  sealing: kiln({
    firing: {
      phase: 'clearing',
      litAt: noon - 441 * minute,
      ribbon: ribbonOf(441, 400, 330, 92, 30),
      acts: [{ id: 's1', at: noon - 90 * minute, doneAt: noon - 90 * minute, act: { action: 'stop-collecting' } }],
    },
    channels: [channel('firebox', 610, -20), channel('wall', 452, 4), channel('smoke', 262, 20), channel('outlet', 44, 0)],
    estimate: { ...charred, smokeC: 261, charShare: 0.97, inside: inside(1, 1.1, 1.3) },
    forecast: null,
    hints: [],
    command: { do: 'seal', next: null, because: [{ code: 'seen-smoke-clear' }], sure: 'high' },
    calls: [{ call: 'seal', state: 'due', since: noon - minute, because: [{ code: 'seen-smoke-clear' }], forecast: null }],
  }),
  night: kiln({
    firing: { phase: 'cooling', sealedAt: noon - 380 * minute, litAt: noon - 820 * minute },
    channels: [channel('firebox', 27, 0), channel('wall', 168, -13), channel('smoke', 17, 0), channel('outlet', 17, 0)],
    command: { do: 'keep-shut', next: null, notBefore: noon + 15.2 * hour, sure: 'high', because: [] },
    estimate: {
      smokeC: 17,
      smokeSd: 1,
      acidShare: 0,
      acidSd: 0,
      tarShare: 0,
      tarSd: 0,
      condensateKgH: 0,
      condensateKg: 9.1,
      charShare: 1,
      charSd: 0.01,
      inside: inside(2, 3, 4),
      from: 'ensemble',
    },
    forecast: null,
    hands: null,
    hints: [],
  }),
  morning: kiln({
    firing: { phase: 'cold', sealedAt: noon - 22 * hour, litAt: noon - 30 * hour },
    channels: [
      channel('firebox', 19, 0),
      channel('wall', 27, 0),
      channel('core', 31, 0),
      channel('ambient', 22, 1),
      channel('outlet', 20, 0),
    ],
    command: { do: 'trial-opening', next: null, sure: 'high', because: [] },
    calls: [{ call: 'open', state: 'due', since: noon - minute, because: [], forecast: null }],
    estimate: null,
    forecast: null,
    hands: null,
    hints: [],
  }),
  'probes-bad': kiln({
    channels: [
      channel('firebox', null, null, { quality: 'fault:open' }),
      channel('wall', 160, null, { heard: 'late', t: noon - 45_000 }),
      channel('smoke', null, null, { heard: 'lost', t: noon - 400_000 }),
      channel('outlet', 34, 3, { quality: 'suspect' }),
    ],
    command: { do: 'wait', next: null, sure: 'low', because: [] },
    alarms: [
      {
        alarm: 'probe-fault',
        channel: 'yard/n1/firebox',
        state: 'unacknowledged',
        priority: 'notice',
        since: noon - minute,
        firstOut: true,
        because: [],
        shelvedUntil: null,
      },
      {
        alarm: 'reignition',
        state: 'unacknowledged',
        priority: 'urgent',
        since: noon - minute,
        firstOut: false,
        because: [],
        shelvedUntil: null,
      },
    ],
  }),
} satisfies Record<string, KilnView>
export type SceneName = keyof typeof scenes
