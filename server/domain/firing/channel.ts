import type { Calibration, ChannelId, KilnConfig, Ms, Quality } from '../../contract/fold.ts'
import { roles, type Role } from '../../contract/vocabulary.ts'

/** One channel as heard so far. */
export interface Channel {
  role: Role | null
  periodS: number
  lsb: number
  value: number | null
  quality: Quality
  t: Ms | null
  /** When a sample, good or not, last came. */
  heardAt: Ms | null
  /** Last seven good values for the outlier test. */
  recent: number[]
  /** Good values since the last grid step. */
  sum: number
  count: number
}

/** A role given in the configuration, or the last part of the channel's name where that is a role. */
export function roleOf(config: KilnConfig, channel: ChannelId): Role | null {
  const given = config.roles[channel]
  if (given !== undefined) return given
  const last = channel.slice(channel.lastIndexOf('/') + 1)
  return roles.find((role) => role === last) ?? null
}

export function newChannel(role: Role | null): Channel {
  return { role, periodS: 5, lsb: 0.25, value: null, quality: 'good', t: null, heardAt: null, recent: [], sum: 0, count: 0 }
}

export function calibrate(calibration: Calibration | undefined, value: number): number {
  return calibration === undefined ? value : calibration.gain * value + calibration.offset
}

/** Takes one sample in; returns its calibrated value when it may be used. */
export function hear(channel: Channel, at: Ms, t: Ms, value: number | null, quality: Quality): number | null {
  channel.heardAt = at
  channel.t = t
  if (value === null || quality.startsWith('fault:')) {
    channel.value = null
    channel.quality = quality
    return null
  }
  const outlying = isOutlier(channel, value)
  channel.recent.push(value)
  if (channel.recent.length > 7) channel.recent.shift()
  channel.quality = outlying ? 'suspect' : quality
  if (outlying) return null
  channel.value = value
  channel.sum += value
  channel.count += 1
  return value
}

/** Hampel test against the last values, scale floored at one step of the converter (instrument facts 4). */
function isOutlier(channel: Channel, value: number): boolean {
  if (channel.recent.length < 5) return false
  const sorted = [...channel.recent].sort((a, b) => a - b)
  const middle = sorted[sorted.length >> 1] ?? value
  const spread = sorted.map((v) => Math.abs(v - middle)).sort((a, b) => a - b)[sorted.length >> 1] ?? 0
  return Math.abs(value - middle) > 3 * Math.max(1.4826 * spread, channel.lsb, 5)
}

/** Wire format 7. */
export function heardState(channel: Channel, at: Ms): 'fresh' | 'late' | 'lost' | 'never' {
  if (channel.heardAt === null) return 'never'
  const ageS = (at - channel.heardAt) / 1000
  if (ageS > Math.max(60, 6 * channel.periodS)) return 'lost'
  return ageS > Math.max(15, 3 * channel.periodS) ? 'late' : 'fresh'
}
