import type { Curve } from '../../../../../server/contract/live.ts'
import type { ProbePlace } from '../../../../../server/contract/lots.ts'

export interface SmokeLine {
  t: readonly number[]
  value: readonly (number | null)[]
  by: 'probe' | 'estimate'
  probeAt: ProbePlace | null
}

/** The smoke of a firing as measured, otherwise as estimated; none where neither was. The role `smoke` is the mouth of the chimney. */
export function smokeLineOf(curve: Curve): SmokeLine | null {
  const measured = curve.series.find(({ key }) => key === 'smoke')
  if (measured?.values.some((value) => value !== null)) return { t: curve.t, value: measured.values, by: 'probe', probeAt: 'chimney-mouth' }
  const estimated = curve.series.find(({ key }) => key === 'smoke-estimated')
  return estimated ? { t: curve.t, value: estimated.values, by: 'estimate', probeAt: null } : null
}
