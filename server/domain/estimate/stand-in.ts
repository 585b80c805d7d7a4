/**
 * A smoke probe that fell silent leaves members that were in step with it: what they say of the smoke, and by how much it read over them, stands
 * in for its number.
 */
export interface StandIn {
  /** Beats in which the probe was heard. */
  heardBeats: number
  /** Beats since it was heard last. */
  silentBeats: number
  /** Smoke as read over the members' mean, smoothed, K. */
  overK: number
}

export const emptyStandIn = (): StandIn => ({ heardBeats: 0, silentBeats: 0, overK: 0 })

/** Heard for an hour the members are in step with it. Common practice, no source. */
const inStepBeats = 30
/** The offset is that of the last 20 minutes, and is forgotten over four hours. Own judgement. */
const smoothBeats = 10
const forgetBeats = 120

/** One beat: `readC` NaN where the probe is silent. */
export function hear(standIn: StandIn, readC: number, membersC: number): void {
  if (Number.isNaN(readC)) {
    standIn.silentBeats++
    return
  }
  const over = readC - membersC
  standIn.overK = standIn.heardBeats === 0 ? over : standIn.overK + (over - standIn.overK) / smoothBeats
  standIn.heardBeats++
  standIn.silentBeats = 0
}

/** Smoke by the members in place of its probe, °C; NaN where the probe was never heard for long. */
export const standsIn = ({ heardBeats, silentBeats, overK }: StandIn, membersC: number): number =>
  heardBeats < inStepBeats ? NaN : membersC + overK * Math.exp(-silentBeats / forgetBeats)
