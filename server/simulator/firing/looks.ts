import type { DripLook, SmokeLook } from '../../contract/vocabulary.ts'
import { Chance } from '../chance.ts'
import type { Course } from './course.ts'
import { gridS } from './course.ts'
import type { WorldPlan } from './plan.ts'
import { dripClasses } from './truth.ts'

export interface Look {
  atS: number
  smoke: SmokeLook
  drip: DripLook
}

/** What the drip looks like by its shares: 0 clear .. 4 black (colours: trade facts 2.19). */
export function shadeOf(share: { acid: number; tar: number }): number {
  return share.tar > 0.3 ? 4 : share.tar > 0.14 ? 3 : share.tar > 0.05 ? 2 : share.acid > 0.03 ? 1 : 0
}

export const drips: readonly DripLook[] = ['clear', 'pale', 'amber', 'dark', 'black']

/** What a person writes down who goes round every half hour or so and errs by a shade now and then (colours: trade facts 1.2, 2.19). */
export function looksOf(plan: WorldPlan, c: Course): Look[] {
  if (!plan.hands.logsLooks) return []
  const chance = new Chance(plan.seed).branch('looks')
  const classes = dripClasses(c)
  const looks: Look[] = []
  for (let atS = chance.between(1500, 3600); atS < c.sealedS - 300; atS += chance.between(1300, 3300)) {
    const i = Math.floor(atS / gridS)
    const { acid, tar, kgS } = classes[i]!
    const smokeC = c.smoke[i]!
    const shade = shadeOf({ acid, tar })
    const erring = chance.uniform()
    const seen = Math.max(0, Math.min(4, shade + (erring < 0.1 ? -1 : erring > 0.9 ? 1 : 0)))
    const charred = c.charred[i]!
    const smoke: SmokeLook =
      charred > 0.97 && chance.often(0.8) ? 'clear' : charred > 0.85 || smokeC > 230 ? 'blue' : acid > 0.05 ? 'yellow' : 'white'
    looks.push({ atS, smoke: chance.often(0.92) ? smoke : 'white', drip: kgS < 1e-6 ? 'none' : drips[seen]! })
  }
  return looks
}
