import { isThermocouple, sensors } from './kind.ts'
import type { Sensor } from './kind.ts'

/** What a birth document tells of the probe, as the `channel` input carries it. */
export interface Probe {
  sensor: string
  converter: string
  linearised: boolean
}

/** Where nothing is told: the usual and worst of the usual. */
const usualProbe: Probe = { sensor: 'K', converter: 'max31855', linearised: false }
/** What a bath of ice or boiling water leaves open (instrument facts 3.1 and 3.2: 0.1 K and the weather). */
const bathK = 0.5
/** A calibration in water says nothing beyond (instrument facts 3.3). */
const bathReachC = 150
/** Left after the exact inverse (instrument facts 2.10). */
const residualK = 0.1

/**
 * How far the value may be off, K: the error budget of instrument facts 2.10 (class 2 sensor, converter, cold junction, rest: independent,
 * root of the sum of squares) with the scatter of the reading itself.
 */
export function valueError(probe: Probe | null, valueC: number, calibrated: boolean, scatterK: number): number {
  const { sensor: name, converter, linearised } = probe ?? usualProbe
  const sensor = sensors.find((known) => known === name) ?? 'other'
  const systematic =
    calibrated && valueC <= bathReachC ? [bathK] : [sensorK(sensor, valueC), ...converterK(sensor, converter, linearised, valueC)]
  return Math.sqrt([...systematic, residualK, scatterK].reduce((sum, part) => sum + part * part, 0))
}

/** Tolerance of a new sensor, K (instrument facts 1.4, class 2; 2.5; 2.7, class B). */
function sensorK(sensor: Sensor, valueC: number): number {
  const away = Math.abs(valueC)
  if (sensor === 'ds18b20') return valueC >= -10 && valueC <= 85 ? 0.5 : 2
  if (sensor === 'pt100') return 0.3 + 0.005 * away
  if (sensor === 'ntc') return 1
  if (sensor === 'T') return Math.max(1, 0.0075 * away)
  if (sensor === 'R' || sensor === 'S' || sensor === 'B') return Math.max(1.5, 0.0025 * away)
  // Two-parameter NTC and unknown sensors apart, all others are base-metal thermocouples.
  return Math.max(2.5, 0.0075 * away)
}

/** Converter and its cold junction, K (instrument facts 2.1 to 2.4). */
function converterK(sensor: Sensor, converter: string, linearised: boolean, valueC: number): number[] {
  if (!isThermocouple(sensor)) return []
  if (converter === 'max31856') return [Math.max(0.5, 0.0015 * Math.abs(valueC)), 0.7]
  const straight = [valueC > 700 ? 4 : 2, 2]
  // Bent on the node with who knows what, or not at all: the straight line's own error at its worst below 1000 °C (instrument facts 2.1).
  return linearised && (converter === 'max31855' || converter === 'max6675') ? [...straight, 3.5] : straight
}
