import type { Action } from '../../contract/actions.ts'
import { gridS } from '../firing/course.ts'
import { drips, shadeOf } from '../firing/looks.ts'
import { actsOf } from '../firing/recording.ts'
import { dripClasses } from '../firing/truth.ts'
import type { Firing } from '../firing/world.ts'
import type { Hours } from './tables/hours.ts'

interface Entry {
  atS: number
  act: Action
}

/** A demijohn of five litres is changed before it runs over. */
const bottleL = 4.5

/** What a careful person would have written down on that day, from loading to unloading; what is called, when it was called (`hours`). */
export function demoActs(firing: Firing, { start, stop, seal, crack }: Hours): { acts: Entry[]; untilS: number } {
  const { truth, course, plan } = firing
  const lastS = course.mouth.length * gridS
  const acts: Entry[] = [
    { atS: -780, act: { action: 'load', ...plan.record, drumC: 17, earthC: 15 } },
    { atS: -120, act: { action: 'arm', tablet: true, buzzer: true } },
    ...actsOf(firing).filter(({ act }) => act.action !== 'light' && act.action !== 'seal'),
    { atS: 0, act: { action: 'light' } },
    { atS: 60, act: { action: 'air', mouth: 'open', chimney: 'open' } },
  ]
  if (start !== null) {
    acts.push({ atS: start, act: { action: 'start-collecting' } })
    // what comes before the stop must not hang on when it was called
    acts.push(...glasses(firing, start, Math.min(truth.sealed, (stop ?? lastS) + 3600)), ...bottles(firing, start, stop ?? lastS))
  }
  if (stop !== null) {
    acts.push({ atS: stop, act: { action: 'stop-collecting' } })
    acts.push({ atS: stop + 240, act: { action: 'note', text: 'Demo: what drips now runs into the vessel for tar.' } })
  }
  if (seal !== null) {
    acts.push({ atS: seal - 240, act: { action: 'refine' } })
    acts.push({ atS: seal, act: { action: 'seal' } })
    acts.push({ atS: seal + 60, act: { action: 'air', mouth: 'closed', chimney: 'closed' } })
  }
  if (crack !== null) {
    acts.push({ atS: crack, act: { action: 'crack' } })
    acts.push({ atS: crack + 2100, act: { action: 'open' } })
    acts.push({ atS: crack + 4200, act: { action: 'unload', charcoalKg: Math.round(truth.charcoalKg * 10) / 10, finesKg: 0.6 } })
  }
  return { acts: acts.sort((a, b) => a.atS - b.atS), untilS: crack === null ? lastS : Math.min(crack + 5400, lastS) }
}

/** A numbered glass whenever the next one is due (calls/hints.ts: every 20 minutes). */
function glasses(firing: Firing, from: number, to: number): Entry[] {
  const classes = dripClasses(firing.course)
  const found: Entry[] = []
  for (let atS = from + 300; atS < to; atS += 1200) {
    const share = classes[Math.floor(atS / gridS)]
    const drip = share && drips[shadeOf(share)]
    if (drip) found.push({ atS, act: { action: 'glass', number: found.length + 1, drip } })
  }
  return found
}

/** A fresh bottle whenever one is full, and the last one when collecting ends (1 kg is about a litre). */
function bottles(firing: Firing, from: number, to: number): Entry[] {
  const { dripWater, dripAcid, dripTar } = firing.course
  const found: Entry[] = []
  let kg = 0
  const change = (atS: number) => {
    found.push({ atS, act: { action: 'swap-bottle', litres: Math.round(kg * 10) / 10 } })
    kg = 0
  }
  for (let i = Math.floor(from / gridS); i < to / gridS; i++) {
    kg += (dripWater[i]! + dripAcid[i]! + dripTar[i]!) * gridS
    if (kg >= bottleL) change(i * gridS)
  }
  if (kg >= 0.1) change(to)
  return found
}
