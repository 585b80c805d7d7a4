import type { AlarmCode } from '../../../server/contract/vocabulary.ts'
import { families, type Family, type Happened } from './world.ts'

/** What an alarm engine told of one firing, ms after lighting. */
export interface Raised {
  alarm: string
  atMs: number
  /** Code of its first reason. */
  because?: string
}

export interface Score {
  happened: number
  told: number
  false: number
}

/** Which alarm tells of which incident. */
export const familyAlarms: Record<Family, readonly AlarmCode[]> = {
  condenserDry: ['condenser-warm', 'condenser-hot'],
  fireDying: ['fire-dying', 'fire-out'],
  airLeak: ['air-leak', 'reignition'],
}

const minuteMs = 60_000

/** Told in time: 10 minutes before to 20 after the start, an air leak to 3 hours after. False: not from 10 before the start to 10 after the end. */
export function score(world: Happened, raised: readonly Raised[]): Record<Family, Score> {
  const of = (family: Family): Score => {
    const happened = world.incidents[family]
    const near = family === 'condenserDry' ? world.incidents.condenserDryish : happened
    const mine = raised.filter(({ alarm }) => (familyAlarms[family] as readonly string[]).includes(alarm))
    const lateMs = (family === 'airLeak' ? 180 : 20) * minuteMs
    return {
      happened: happened.length,
      told: happened.filter(([from]) => mine.some(({ atMs }) => atMs >= from - 10 * minuteMs && atMs <= from + lateMs)).length,
      false: mine.filter(({ atMs }) => !near.some(([from, to]) => atMs >= from - 10 * minuteMs && atMs <= to + 10 * minuteMs)).length,
    }
  }
  return Object.fromEntries(families.map((family) => [family, of(family)])) as Record<Family, Score>
}
