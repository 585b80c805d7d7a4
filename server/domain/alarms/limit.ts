/** How a value stands to a limit: the dead-band applies on return only (instrument facts 6.3). */
export type Sign = 'abnormal' | 'normal' | 'between' | 'unknown'

export function above(value: number | null | undefined, limit: number, deadBand: number): Sign {
  if (value === null || value === undefined) return 'unknown'
  if (value >= limit) return 'abnormal'
  return value < limit - deadBand ? 'normal' : 'between'
}

export function below(value: number | null | undefined, limit: number, deadBand: number): Sign {
  if (value === null || value === undefined) return 'unknown'
  if (value <= limit) return 'abnormal'
  return value > limit + deadBand ? 'normal' : 'between'
}

/** A yes or no without a band; null is a thing that cannot be judged now. */
export function when(yes: boolean | null): Sign {
  return yes === null ? 'unknown' : yes ? 'abnormal' : 'normal'
}
