import { thermocoupleLetters } from './tables/its90.ts'
import type { ThermocoupleLetter } from './tables/its90.ts'

export const sensors = [...thermocoupleLetters, 'pt100', 'ntc', 'ds18b20', 'hx711', 'co', 'other'] as const
export type Sensor = (typeof sensors)[number]

export const converters = ['max31855', 'max6675', 'max31856', 'ads1115', 'ads1220', 'none'] as const
export type Converter = (typeof converters)[number]

/** What is known of the probe and the chip behind a channel; it decides how a number as sent becomes a temperature. */
export interface ChannelKind {
  /** Primary unit of what is sent; `Cel`, `V`, `Ohm`, `kg`, `/` and so on. */
  unit: string
  sensor: Sensor
  converter: Converter
  /** False: the chip assumes a straight line and the service bends it. */
  linearised: boolean
  /** Of an NTC that is sent in ohms. */
  ntc?: { ohmAt25C: number; betaK: number }
}

/** What is taken for granted of a channel that no birth document describes (wire format: units from the pack, already linearised). */
export const plainKind = (unit: string): ChannelKind => ({ unit, sensor: 'other', converter: 'none', linearised: true })

export const isThermocouple = (sensor: Sensor): sensor is ThermocoupleLetter => (thermocoupleLetters as readonly string[]).includes(sensor)
