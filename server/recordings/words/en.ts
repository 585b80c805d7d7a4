import type { AlarmState, Call, HintCode, Phase, Priority } from '../../contract/vocabulary.ts'
import type { AlarmCode } from '../../contract/vocabulary.ts'

/** Words of the readable account of a replay. */
export const phaseWords: Record<Phase, string> = {
  idle: 'nothing is burning',
  kindling: 'kindling',
  drying: 'the wood dries',
  breakdown: 'the wood begins to give itself up',
  vinegar: 'vinegar runs',
  tar: 'tar runs',
  clearing: 'the smoke clears',
  cooling: 'sealed, cooling',
  cold: 'cold',
  failed: 'the fire died',
}

export const callWords: Record<Call, { due: string; withdrawn: string }> = {
  'stop-feeding': { due: 'Stop feeding the small fire.', withdrawn: 'Stop feeding: taken back.' },
  'start-collecting': { due: 'Start collecting.', withdrawn: 'Start collecting: taken back.' },
  'stop-collecting': { due: 'Stop collecting.', withdrawn: 'Stop collecting: taken back.' },
  seal: { due: 'Seal the kiln: mouth first, chimney last, standing aside.', withdrawn: 'Seal: taken back.' },
  open: {
    due: 'Trial opening: a small gap, stand aside, clay ready, watch for 30 minutes.',
    withdrawn: 'Trial opening: taken back, keep it shut.',
  },
}

export const alarmWords: Record<AlarmCode, string> = {
  'condenser-warm': 'the condenser is warm',
  'condenser-hot': 'the condenser is hot',
  'fire-dying': 'the fire is dying',
  'fire-out': 'the fire is out',
  'flame-inside': 'flame inside the drum',
  'stop-overdue': 'stop collecting is overdue',
  'seal-overdue': 'sealing is overdue',
  'air-leak': 'air is getting in',
  reignition: 'the charcoal is burning again',
  'vent-choked': 'the vent is choked',
  'co-high': 'carbon monoxide is high',
  'probe-fault': 'a probe reports a fault',
  'probe-silent': 'a probe is silent',
  'probe-stuck': 'a probe stands still',
  'probe-swapped': 'two probes look swapped',
  'wall-off': 'the wall probe came off',
  'node-lost': 'a node is lost',
  'clock-suspect': 'a clock cannot be trusted',
  'storage-failing': 'readings cannot be stored',
  'service-failing': 'the service itself is failing',
  'nobody-watching': 'nobody is watching',
}

export const alarmStateWords: Record<AlarmState, string> = {
  normal: 'over',
  unacknowledged: 'begins',
  acknowledged: 'seen by somebody',
  'returned-unacknowledged': 'passed, not yet seen by anybody',
  'latched-unacknowledged': 'passed, stays until seen',
  'latched-acknowledged': 'passed and seen, stays until reset',
  shelved: 'put aside for a while',
  suppressed: 'does not count in this phase',
  'out-of-service': 'out of service',
}

export const priorityWords: Record<Priority, string> = { notice: 'Notice', warning: 'Warning', urgent: 'URGENT' }

export const hintWords: Record<HintCode, string> = {
  'feed-fire': 'feed the fire',
  'wet-cloths': 'wet the cloths',
  'fresh-bottle': 'put a fresh bottle under the drip',
  'take-glass': 'take a glass of the drip',
  'narrow-air': 'narrow the air',
  'check-drip': 'look at the drip',
  'check-smoke': 'look at the smoke',
  'log-seal': 'sealed already? log it',
}

export const words = {
  by: 'by',
  expected: 'expected between',
  and: 'and',
  mostLikely: 'most likely',
  phase: 'Phase:',
  soon: 'Soon:',
  smoke: 'Smoke about',
  tar: 'tar in the condensate',
  acids: 'acids',
  readings: 'readings',
  refused: 'refused:',
  none: 'none refused',
  ends: 'The recording ends:',
  times: 'Times are UTC.',
}
