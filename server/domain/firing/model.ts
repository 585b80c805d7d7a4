import type { Act } from '../../contract/actions.ts'
import type { KilnConfig, Ms } from '../../contract/fold.ts'
import type { Evidence, Estimator, GridReadings } from '../estimate/types.ts'
import { letRun } from './run.ts'
import type { KilnState } from './state.ts'

/** The config that the estimator starts with: what was weighed at loading outranks the plan. */
export function modelConfig(state: KilnState): KilnConfig {
  return { ...state.config, charge: { ...state.config.charge, ...state.facts.charge } }
}

/** What an act tells the estimator; null where it tells nothing. */
export function evidenceOf({ act, doneAt }: Pick<Act, 'act' | 'doneAt'>): Evidence[] {
  switch (act.action) {
    case 'light':
      return [{ at: doneAt, kind: 'lit' }]
    case 'load':
      return [{ at: doneAt, kind: 'charge', charge: chargeOf(act) }]
    case 'refuel':
      return [{ at: doneAt, kind: 'fed' }]
    case 'wet-condenser':
      return [{ at: doneAt, kind: 'wetted' }]
    case 'swap-bottle':
      return act.litres === undefined ? [] : [{ at: doneAt, kind: 'bottle', litres: act.litres }]
    case 'air':
      return [
        {
          at: doneAt,
          kind: 'air',
          ...(act.mouth === undefined ? {} : { mouth: act.mouth }),
          ...(act.chimney === undefined ? {} : { chimney: act.chimney }),
        },
      ]
    case 'stop-feeding':
      return [{ at: doneAt, kind: 'stopped-feeding' }]
    case 'weather':
      return [{ at: doneAt, kind: 'weather', weather: act.weather }]
    case 'seal':
    case 'reseal':
      return [{ at: doneAt, kind: 'sealed' }]
    case 'crack':
    case 'open':
      return [{ at: doneAt, kind: 'opened' }]
    case 'glass':
      return act.drip === undefined ? [] : [{ at: doneAt, kind: 'drip', look: act.drip }]
    case 'observe':
      return [
        ...(act.smoke === undefined ? [] : [{ at: doneAt, kind: 'smoke' as const, look: act.smoke }]),
        ...(act.drip === undefined ? [] : [{ at: doneAt, kind: 'drip' as const, look: act.drip }]),
      ]
    default:
      return []
  }
}

function chargeOf(act: Extract<Act['act'], { action: 'load' }>): KilnConfig['charge'] {
  return {
    ...(act.massKg === undefined ? {} : { massKg: act.massKg }),
    ...(act.moisturePct === undefined ? {} : { moisturePct: act.moisturePct }),
    ...(act.pieceMm === undefined ? {} : { pieceMm: act.pieceMm }),
  }
}

/** One grid step of the estimator; its advice once a minute. */
export function stepModel<M>(state: KilnState<M>, estimator: Estimator<M>, at: Ms): void {
  const { now } = state
  const readings: GridReadings = {
    at,
    fireboxC: now.firebox ?? null,
    wallC: now.wall ?? null,
    outletC: now.outlet ?? null,
    smokeC: now.smoke ?? null,
    ambientC: now.ambient ?? null,
    coreC: now.core ?? null,
    bottleKg: now.bottle ?? null,
  }
  state.model = estimator.step(state.model ?? estimator.start(modelConfig(state)), readings, state.evidence)
  state.evidence = []
  if (at % 60_000 !== 0) return
  state.estimate = estimator.estimate(state.model)
  state.advice = estimator.advice(state.model)
  if (state.facts.sealedAt === null) letRun(state.run, state.estimate)
}
