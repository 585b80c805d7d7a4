import type { Fallen } from '../../../server/contract/learnt.ts'
import { conditionsOf, edges, stretchesOf } from '../../../server/domain/cooling/falls.ts'
import { noiseOf } from '../../../server/domain/cooling/tight.ts'
import { follow } from './follow.ts'
import { kinWorlds, nightOf } from './kin.ts'

/** A tight night of a kiln, as far as its wall probe sat. */
export interface FallenNight {
  kiln: number
  world: string
  night: Fallen
}

/** Tight nights of one kiln that are taken, and how many its kilns have of it. */
export const daysOf = 4

export function fallsOf(kiln: number): FallenNight[] {
  const fallen: FallenNight[] = []
  for (let day = 0; day < daysOf; day++) {
    const { course, readings } = nightOf(kiln, day, 'tight', day)
    const until = readings.off?.minute ?? Infinity
    let night: Fallen | null = null
    follow(course, readings, null, ({ before, firstK, warmthK }, minute) => {
      if (minute > until || firstK === null || minute > 10 * (edges.at(-1) ?? 0)) return
      if (warmthK.length > (night?.warmthK.length ?? 0)) night = { conditions: conditionsOf(before, firstK), warmthK: [...warmthK] }
    })
    if (night !== null) fallen.push({ kiln, world: kinWorlds[kiln % kinWorlds.length] ?? '', night })
  }
  return fallen
}

/** A row as the fit sees it: by stretch the logarithm of the fall and the square of its noise; NaN where it tells nothing. */
export function rowOf(night: Fallen): { logs: number[]; noise: number[] } {
  const logs = new Array<number>(edges.length - 1).fill(NaN)
  const noise = new Array<number>(edges.length - 1).fill(0)
  for (const stretch of stretchesOf(night)) {
    logs[stretch.at] = stretch.logPerH
    noise[stretch.at] = noiseOf(stretch)
  }
  return { logs, noise }
}
