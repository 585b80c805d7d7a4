import type { FaultWord } from '../../contract/vocabulary.ts'
import { isThermocouple } from './kind.ts'
import type { ChannelKind } from './kind.ts'
import { thermocoupleRange } from './thermocouple.ts'

export interface Beside {
  /** Board temperature that came with the reading, °C. */
  coldJunctionC: number | null
  /** The last good number of this channel as sent, when it is at most a minute old. */
  recent: number | null
}

/** How near the last number makes a sentinel believable; common practice, no source. */
const believable = 5

/** Numbers that a chip or its driver gives when it has nothing to say (instrument facts 2 and 4, validity gate). */
export function sentinelFault(kind: ChannelKind, sent: number, { coldJunctionC, recent }: Beside): FaultWord | null {
  const backed = recent !== null && recent !== sent && Math.abs(recent - sent) <= believable
  if (kind.sensor === 'ds18b20' && kind.unit === 'Cel') {
    if (sent === -127) return 'bus'
    if (sent === 85 && !backed) return 'not-converted'
  }
  if (kind.converter === 'max6675' && kind.unit === 'Cel') {
    if (sent >= 1023.75) return 'saturated'
    if (sent === 0 && !backed) return 'range'
  }
  // A data line that is stuck low reads as 0.00 °C on a board of 0.0000 °C.
  if (kind.converter === 'max31855' && sent === 0 && coldJunctionC === 0 && !backed) return 'bus'
  if (kind.sensor === 'hx711' && kind.unit === 'count' && (sent >= 8_388_607 || sent <= -8_388_608)) return 'saturated'
  // Open wires are pulled to full scale, ±0.256 V on the range used for thermocouples.
  if (kind.converter === 'ads1115' && kind.unit === 'V' && Math.abs(sent) >= 0.2559) return 'open'
  return null
}

/** What a probe of this kind can show, in °C (in the channel's own unit where that is no temperature). */
export function kindRange(kind: ChannelKind): { from: number; to: number } {
  if (kind.unit === 'kg') return { from: -50, to: 500 }
  if (kind.unit === '/') return { from: 0, to: 1_000_000 } // told in ppm
  if (!isTemperature(kind)) return { from: -1e12, to: 1e12 }
  if (isThermocouple(kind.sensor)) {
    const { fromC, toC } = thermocoupleRange(kind.sensor)
    return { from: Math.max(fromC, -200), to: toC }
  }
  if (kind.sensor === 'ds18b20') return { from: -55, to: 125 }
  if (kind.sensor === 'pt100') return { from: -200, to: 850 }
  if (kind.sensor === 'ntc') return { from: -60, to: 300 }
  return { from: -200, to: 1820 }
}

/** Whether a channel of this kind tells °C in the end. */
export function isTemperature({ unit, sensor }: ChannelKind): boolean {
  const behindVoltage = unit === 'V' && isThermocouple(sensor)
  const behindResistance = unit === 'Ohm' && (sensor === 'pt100' || sensor === 'ntc')
  return unit === 'Cel' || unit === 'K' || behindVoltage || behindResistance
}

/**
 * Colder than any air in which a kiln burns, and near where the registers of its coolest probe and of every converter's own board end, -55 °C
 * (instrument facts 2.1, 2.3, 2.5): a shorted, reversed or chattering wire shows such numbers, no kiln does.
 */
export const coldestC = -50

/** Registers of converters and probes span ±2048 °C (instrument facts 2.1, 2.3, 2.5): what is beyond was never a reading. */
const registerC = 2048
/** Bounds of what can be meant in other units; common practice, no source. */
const sensible: Record<string, { from: number; to: number }> = {
  K: { from: 0, to: registerC + 273.15 },
  Cel: { from: -registerC, to: registerC },
  V: { from: -10, to: 10 },
  Ohm: { from: 0, to: 1e8 },
  kg: { from: -10_000, to: 10_000 },
  '/': { from: 0, to: 1 },
}

/** Whether the number can be a reading at all, in the unit it was sent in. */
export function isSensible({ unit }: ChannelKind, sent: number): boolean {
  const bounds = sensible[unit]
  return bounds === undefined || (sent >= bounds.from && sent <= bounds.to)
}
