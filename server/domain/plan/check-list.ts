import type { CheckCode } from '../../contract/plan.ts'
import { checkCodes } from '../../contract/plan.ts'

/** A drum still warm may hold embers (from memory, no source). */
export const warmestDrumC = 40

/** `refuse`: while it is not so, nothing is lit. `ready`: have it there first. */
export interface CheckItem {
  code: CheckCode
  group: 'refuse' | 'ready'
}

const refusals: readonly CheckCode[] = [
  'wood-known',
  'wood-not-treated',
  'wood-not-painted',
  'no-galvanised',
  'no-asbestos-cement',
  'no-chemical-drum',
  'drum-cold',
  'drum-sound',
  'pipe-free',
  'far-from-dwellings',
  'nobody-sleeps-beside',
  'no-drink-bottles',
]

export function checkList(): CheckItem[] {
  return checkCodes.map((code) => ({ code, group: refusals.includes(code) ? 'refuse' : 'ready' }))
}

/** What stands against lighting; the temperatures as recorded at loading. */
export function againstLighting(said: Partial<Record<CheckCode, boolean>>, drumC: number | null, earthC: number | null): CheckCode[] {
  const open = checkList().filter(({ code, group }) => group === 'refuse' && said[code] !== true)
  const warm = (drumC ?? 0) > warmestDrumC || (earthC ?? 0) > warmestDrumC
  const codes = open.map(({ code }) => code)
  return warm && !codes.includes('drum-cold') ? [...codes, 'drum-cold'] : codes
}
