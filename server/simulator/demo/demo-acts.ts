import type { Action } from '../../contract/actions.ts'
import { gridS } from '../firing/course.ts'
import { drips, shadeOf } from '../firing/looks.ts'
import { actsOf } from '../firing/recording.ts'
import { dripClasses } from '../firing/truth.ts'
import type { Firing } from '../firing/world.ts'

interface Entry {
  atS: number
  act: Action
}

/** What a careful person would have written down on that day, from loading to unloading. */
export function demoActs(firing: Firing): { acts: Entry[]; untilS: number } {
  const { truth, course, plan } = firing
  const from = (truth.best.from ?? 0) + 360
  const to = (truth.best.to ?? 0) - 300
  const crackS = Math.ceil(((truth.hottestBelow[45] ?? 0) + 1500) / 600) * 600
  const acts: Entry[] = [
    { atS: -780, act: { action: 'load', ...plan.record, drumC: 17, earthC: 15 } },
    { atS: -120, act: { action: 'arm', tablet: true, buzzer: true } },
    ...actsOf(firing).filter(({ act }) => act.action !== 'light' && act.action !== 'seal'),
    { atS: 0, act: { action: 'light' } },
    { atS: 60, act: { action: 'air', mouth: 'open', chimney: 'open' } },
    { atS: from, act: { action: 'start-collecting' } },
    { atS: to, act: { action: 'stop-collecting' } },
    { atS: to + 240, act: { action: 'note', text: 'Demo: the drip is about to turn dark; from here on it runs into the vessel for tar.' } },
    { atS: truth.sealed - 900, act: { action: 'refine' } },
    { atS: truth.sealed, act: { action: 'seal' } },
    { atS: truth.sealed + 60, act: { action: 'air', mouth: 'closed', chimney: 'closed' } },
    { atS: crackS, act: { action: 'crack' } },
    { atS: crackS + 2100, act: { action: 'open' } },
    { atS: crackS + 4200, act: { action: 'unload', charcoalKg: Math.round(truth.charcoalKg * 10) / 10, finesKg: 0.6 } },
    ...glasses(firing, from, to),
    ...bottles(firing, from, to),
  ]
  return { acts: acts.sort((a, b) => a.atS - b.atS), untilS: Math.min(crackS + 5400, course.mouth.length * gridS) }
}

/** A numbered glass every half hour of collecting, and two after it. */
function glasses(firing: Firing, from: number, to: number): Entry[] {
  const classes = dripClasses(firing.course)
  const found: Entry[] = []
  for (let atS = from + 300; atS < to + 3600; atS += 1800) {
    const share = classes[Math.floor(atS / gridS)]
    const drip = share && drips[shadeOf(share)]
    if (drip) found.push({ atS, act: { action: 'glass', number: found.length + 1, drip } })
  }
  return found
}

/** A fresh bottle in the middle and before the end, with what ran into the last one (1 kg is about a litre). */
function bottles(firing: Firing, from: number, to: number): Entry[] {
  const { dripWater, dripAcid, dripTar } = firing.course
  const litres = (a: number, b: number) => {
    let kg = 0
    for (let i = Math.floor(a / gridS); i < b / gridS; i++) kg += (dripWater[i]! + dripAcid[i]! + dripTar[i]!) * gridS
    return Math.round(kg * 10) / 10
  }
  const middle = from + (to - from) * 0.5
  const late = to - 2400
  return [
    { atS: middle, act: { action: 'swap-bottle', litres: litres(from, middle) } },
    { atS: late, act: { action: 'swap-bottle', litres: litres(middle, late) } },
  ]
}
