import type { FaultWord } from '../../contract/vocabulary.ts'
import { Chance } from '../chance.ts'
import { quantise } from '../node/thermocouple.ts'
import type { Course } from './course.ts'
import { gridS } from './course.ts'
import type { WorldPlan } from './plan.ts'

export const channelNames = ['firebox', 'wall', 'outlet', 'smoke', 'ambient', 'core'] as const
export type ChannelName = (typeof channelNames)[number]

/** What the node measured, every ten seconds. */
export interface Sampled {
  /** Seconds after lighting of the first row (negative: the node is on before). */
  fromS: number
  rows: number
  channels: { name: ChannelName; chip: 'thermocouple' | 'ds18b20'; lsb: number; values: (number | FaultWord)[] }[]
  coldJunctionC: number[]
  /** 0 arrived live, 1 came later as backlog, 2 never came. */
  fate: Uint8Array
}

/** Puts probes with their place, contact, lag, noise and faults into a course. */
export function sample(plan: WorldPlan, c: Course): Sampled {
  const { probes } = plan
  const chance = new Chance(plan.seed).branch('probes')
  const lead = probes.leadS / gridS
  const rows = lead + c.mouth.length
  const names = channelNames.filter(
    (name) => (name !== 'smoke' || probes.smoke) && (name !== 'ambient' || probes.ambient) && (name !== 'core' || probes.core),
  )
  const trueC = (name: ChannelName, i: number): number => {
    switch (name) {
      case 'firebox':
        return c.air[i]! + probes.mouthShare * (c.mouth[i]! - c.air[i]!)
      case 'wall':
        return c.skin[i]! + probes.wallContact * (c.wall[i]! - c.skin[i]!)
      case 'outlet':
        return c.outlet[i]!
      case 'smoke':
        return c.air[i]! + probes.smokeShare * (c.smoke[i]! - c.air[i]!)
      case 'ambient':
        return c.air[i]!
      case 'core':
        return c.core[i]!
    }
  }
  const channels = names.map((name) => {
    const dice = chance.branch(name)
    const chip =
      name === 'ambient' || (name === 'outlet' && probes.outletChip === 'ds18b20') ? ('ds18b20' as const) : ('thermocouple' as const)
    const lsb = chip === 'ds18b20' ? 0.0625 : probes.lsb
    const lagS = name === 'ambient' || name === 'core' ? 120 : probes.lagS[name]
    const keep = Math.exp(-gridS / lagS)
    const noise = chip === 'ds18b20' ? 0.06 : probes.noiseK
    const offset = probes.offsetK[name]
    let seen = trueC(name, 0)
    const values: (number | FaultWord)[] = []
    for (let row = 0; row < rows; row++) {
      const now = trueC(name, Math.max(0, row - lead))
      seen = keep * seen + (1 - keep) * now
      let value = seen + offset + noise * dice.normal()
      if (chip === 'thermocouple' && dice.often(probes.spikes)) value += dice.between(80, 420)
      values.push(quantise(value, lsb))
    }
    return { name, chip, lsb, values }
  })
  loosen(plan, channels, lead, chance.branch('loose'))
  const warm = chance.between(3, 9)
  const fate = new Uint8Array(rows)
  if (probes.lost) {
    const from = lead + Math.floor((probes.lost.fromH * 3600) / gridS)
    const to = lead + Math.floor((probes.lost.toH * 3600) / gridS)
    fate.fill(probes.lost.kept ? 1 : 2, from, Math.min(rows, to))
  }
  return {
    fromS: -lead * gridS,
    rows,
    channels,
    // the box stands near the kiln: a little warmer than the air, more while it burns
    coldJunctionC: Array.from({ length: rows }, (_, row) => {
      const i = Math.max(0, row - lead)
      return quantise(c.air[i]! + (i * gridS < c.sealedS && row > lead ? warm : warm * 0.4), 0.0625)
    }),
    fate,
  }
}

/** A loose wire: from some hour on, one thermocouple reads open now and then for up to twenty minutes. */
function loosen(plan: WorldPlan, channels: Sampled['channels'], lead: number, chance: Chance): void {
  if (plan.probes.openFrom === null) return
  const wired = channels.filter((channel) => channel.chip === 'thermocouple')
  const loose = wired[Math.floor(chance.uniform() * wired.length)]
  if (!loose) return
  const end = loose.values.length
  for (let row = lead + Math.floor((plan.probes.openFrom * 3600) / gridS); row < end;) {
    const long = chance.whole(1, 120)
    for (let k = row; k < Math.min(end, row + long); k++) loose.values[k] = 'open'
    row += long + chance.whole(60, 1500)
  }
}
