import type { FaultWord } from '../../contract/vocabulary.ts'
import { coldestC, isSensible, isTemperature, kindRange, sentinelFault } from './gate.ts'
import type { Beside } from './gate.ts'
import { isThermocouple } from './kind.ts'
import type { ChannelKind } from './kind.ts'
import { ntcC, pt100C } from './resistance.ts'
import { straightLineMvPerK, straightLineToC } from './straight-line.ts'
import { thermocoupleC, thermocoupleMv, thermocoupleSlope } from './thermocouple.ts'

/** Taken where a node tells nothing of its board (wire format, birth document). */
export const assumedColdJunctionC = 30

export type Converted =
  /** °C, kg or ppm. `assumed`: no cold junction was told, `assumedColdJunctionC` stands in for it. */
  | { is: 'value'; value: number; quality: 'good' | 'suspect'; assumed: boolean }
  /** Further out than the probe can show: a glitch, or, when it stays so, a fault. The value is the number held to the probe's range. */
  | { is: 'beyond'; value: number }
  | { is: 'fault'; fault: FaultWord }
  /** No reading at all. */
  | { is: 'out-of-range' }

/** Share of a probe's span by which a number may stand outside and still be taken, in doubt (instrument facts 5.4, rule 12). */
const tolerance = 0.2

/** From a number as sent to what it means: sentinels, then linearisation, then the range of the probe. Raw numbers stay with the caller. */
export function convert(kind: ChannelKind, sent: number, beside: Beside): Converted {
  const fault = sentinelFault(kind, sent, beside)
  if (fault !== null) return { is: 'fault', fault }
  if (!isSensible(kind, sent)) return { is: 'out-of-range' }
  const assumed = beside.coldJunctionC === null && needsColdJunction(kind)
  const value = linear(kind, sent, beside.coldJunctionC ?? assumedColdJunctionC)
  const { from, to } = kindRange(kind)
  if (isTemperature(kind) && (value ?? (sent > 0 ? to : from)) < coldestC) return { is: 'out-of-range' }
  if (value === null) return { is: 'beyond', value: sent > 0 ? to : from }
  const slack = tolerance * (to - from)
  if (value < from - slack || value > to + slack) return { is: 'beyond', value: Math.min(Math.max(value, from), to) }
  const doubtful = value < from || value > to || (assumed && boardMatters(kind, sent, value))
  return { is: 'value', value, quality: doubtful ? 'suspect' : 'good', assumed }
}

/** True for what can not be told exactly without the temperature of the node's board. */
export function needsColdJunction(kind: ChannelKind): boolean {
  if (!isThermocouple(kind.sensor)) return false
  return kind.unit === 'V' || (!kind.linearised && straightLineMvPerK(kind.converter, kind.sensor) !== null)
}

function linear(kind: ChannelKind, sent: number, boardC: number): number | null {
  const { sensor, unit } = kind
  if (unit === '/') return Math.round(sent * 1e9) / 1e3 // ppm
  if (unit === 'K') return sent - 273.15
  if (unit === 'Ohm' && sensor === 'pt100') return pt100C(sent)
  if (unit === 'Ohm' && sensor === 'ntc') return ntcC(sent, kind.ntc?.ohmAt25C ?? 10_000, kind.ntc?.betaK ?? 3950)
  if (!isThermocouple(sensor)) return sent
  if (unit === 'V') return thermocoupleC(sensor, sent * 1000 + thermocoupleMv(sensor, boardC))
  const mvPerK = kind.linearised ? null : straightLineMvPerK(kind.converter, sensor)
  return mvPerK === null ? sent : straightLineToC(sensor, mvPerK, sent, boardC)
}

/** A board in the shade of a kiln; common practice, no source. */
const coolestBoardC = 10
const hottestBoardC = 60
/** The converter's own error (instrument facts 2.1): less than that needs no warning. */
const tolerableK = 2

/** Whether not knowing the board's temperature can be worth more than the chip's own error: never for type K behind a straight-line chip. */
function boardMatters(kind: ChannelKind, sent: number, value: number): boolean {
  const cool = linear(kind, sent, coolestBoardC)
  const hot = linear(kind, sent, hottestBoardC)
  return cool === null || hot === null || Math.abs(cool - value) > tolerableK || Math.abs(hot - value) > tolerableK
}

/** A step of the converter told in the unit of the value: °C, kg or ppm. */
export function stepOfValue({ unit, sensor }: ChannelKind, step: number): number {
  if (unit === '/') return step * 1e6
  if (unit === 'V' && isThermocouple(sensor)) return (step * 1000) / thermocoupleSlope(sensor, usualC)
  if (unit === 'Ohm' && sensor === 'pt100') return step / pt100OhmPerK
  // An NTC's step grows with the temperature; a tenth of a kelvin is common practice, no source.
  return unit === 'Ohm' && sensor === 'ntc' ? 0.1 : step
}

/** Where most of a kiln's channels stand; the sensitivity changes little about it. */
const usualC = 300
/** At 0 °C (IEC 60751). */
const pt100OhmPerK = 0.39083
