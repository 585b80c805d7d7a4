import type { Calibration, ChannelId, KilnConfig } from '../../contract/fold.ts'
import type { Role } from '../../contract/vocabulary.ts'
import { configOf } from '../play.ts'
import type { Recording } from '../read.ts'

export interface Correction {
  /** Only the channels that were wrong. */
  roles: Record<ChannelId, Role>
  /** value = gain × reading + offset, °C. */
  calibration: Record<ChannelId, Calibration>
}

/** The same raw lines, with the probes as they really sat and read: in the header and in every later change of settings. */
export function corrected({ header, lines }: Recording, correction: Correction): Recording {
  const right = (config: KilnConfig): KilnConfig => ({
    ...config,
    roles: { ...config.roles, ...correction.roles },
    calibration: { ...config.calibration, ...correction.calibration },
  })
  const rightLines = lines.map((line) => ('config' in line ? { ...line, config: right(line.config) } : line))
  const roles = { ...header.roles, ...correction.roles }
  if (header.start)
    return { header: { ...header, roles, start: { ...header.start, config: right(header.start.config) } }, lines: rightLines }
  const first = lines[0]
  // a file without a beginning of its own carries its calibration in a first change of settings
  const settings = first && { at: first.at, config: right(configOf(header)) }
  return { header: { ...header, roles }, lines: settings ? [settings, ...rightLines] : rightLines }
}
