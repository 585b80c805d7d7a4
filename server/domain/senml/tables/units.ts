/** Primary units: RFC 8428 section 12.1 and RFC 8798 section 2. */
export const primaryUnits: ReadonlySet<string> = new Set([
  ...['m', 'kg', 'g', 's', 'A', 'K', 'cd', 'mol', 'Hz', 'rad', 'sr', 'N', 'Pa', 'J', 'W', 'C', 'V', 'F', 'Ohm', 'S', 'Wb', 'T', 'H', 'Cel'],
  ...['lm', 'lx', 'Bq', 'Gy', 'Sv', 'kat', 'm2', 'm3', 'l', 'm/s', 'm/s2', 'm3/s', 'l/s', 'W/m2', 'cd/m2', 'bit', 'bit/s', 'lat', 'lon'],
  ...['pH', 'dB', 'dBW', 'Bspl', 'count', '/', '%', '%RH', '%EL', 'EL', '1/s', '1/min', 'beat/min', 'beats', 'S/m'],
  ...['B', 'VA', 'VAs', 'var', 'vars', 'J/m', 'kg/m3', 'deg'],
])

/** Secondary units: RFC 8798 section 3; primary = value × scale + offset. */
export const secondaryUnits = {
  ms: { primary: 's', scale: 1 / 1000, offset: 0 },
  min: { primary: 's', scale: 60, offset: 0 },
  h: { primary: 's', scale: 3600, offset: 0 },
  MHz: { primary: 'Hz', scale: 1_000_000, offset: 0 },
  kW: { primary: 'W', scale: 1000, offset: 0 },
  kVA: { primary: 'VA', scale: 1000, offset: 0 },
  kvar: { primary: 'var', scale: 1000, offset: 0 },
  Ah: { primary: 'C', scale: 3600, offset: 0 },
  Wh: { primary: 'J', scale: 3600, offset: 0 },
  kWh: { primary: 'J', scale: 3_600_000, offset: 0 },
  varh: { primary: 'vars', scale: 3600, offset: 0 },
  kvarh: { primary: 'vars', scale: 3_600_000, offset: 0 },
  kVAh: { primary: 'VAs', scale: 3_600_000, offset: 0 },
  'Wh/km': { primary: 'J/m', scale: 3.6, offset: 0 },
  KiB: { primary: 'B', scale: 1024, offset: 0 },
  GB: { primary: 'B', scale: 1_000_000_000, offset: 0 },
  'Mbit/s': { primary: 'bit/s', scale: 1_000_000, offset: 0 },
  'B/s': { primary: 'bit/s', scale: 8, offset: 0 },
  'MB/s': { primary: 'bit/s', scale: 8_000_000, offset: 0 },
  mV: { primary: 'V', scale: 1 / 1000, offset: 0 },
  mA: { primary: 'A', scale: 1 / 1000, offset: 0 },
  dBm: { primary: 'dBW', scale: 1, offset: -30 },
  'ug/m3': { primary: 'kg/m3', scale: 1e-9, offset: 0 },
  'mm/h': { primary: 'm/s', scale: 1 / 3_600_000, offset: 0 },
  'm/h': { primary: 'm/s', scale: 1 / 3600, offset: 0 },
  ppm: { primary: '/', scale: 1e-6, offset: 0 },
  '/100': { primary: '/', scale: 1 / 100, offset: 0 },
  '/1000': { primary: '/', scale: 1 / 1000, offset: 0 },
  hPa: { primary: 'Pa', scale: 100, offset: 0 },
  mm: { primary: 'm', scale: 1 / 1000, offset: 0 },
  cm: { primary: 'm', scale: 1 / 100, offset: 0 },
  km: { primary: 'm', scale: 1000, offset: 0 },
  'km/h': { primary: 'm/s', scale: 1 / 3.6, offset: 0 },
} as const satisfies Record<string, { primary: string; scale: number; offset: number }>

type SecondaryUnit = keyof typeof secondaryUnits

export const isSecondaryUnit = (unit: string): unit is SecondaryUnit => Object.hasOwn(secondaryUnits, unit)
