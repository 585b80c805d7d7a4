import type { ChannelId, KilnConfig, Ms, NodeId } from '../../contract/fold.ts'
import { roles, type Role } from '../../contract/vocabulary.ts'
import { startTrack, trackSample, type Track, type TrackSample } from '../channels/track.ts'

/** One channel at this kiln: what it measures, its track, and the good values since the last grid step. */
export interface Channel {
  role: Role | null
  node: NodeId
  track: Track
  sum: number
  count: number
  /** When the raw number last changed, and to what: a probe that is stuck shows itself this way. */
  changedAt: Ms | null
  changedTo: number | null
  faultSince: Ms | null
}

/** A role given in the configuration, or the last part of the channel's name where that is a role. */
export function roleOf(config: KilnConfig, channel: ChannelId): Role | null {
  const given = config.roles[channel]
  if (given !== undefined) return given
  const last = channel.slice(channel.lastIndexOf('/') + 1)
  return roles.find((role) => role === last) ?? null
}

export function newChannel(config: KilnConfig, id: ChannelId): Channel {
  const node = id.split('/').slice(0, 2).join('/')
  return {
    role: roleOf(config, id),
    node,
    track: startTrack(5, 0.25),
    sum: 0,
    count: 0,
    changedAt: null,
    changedTo: null,
    faultSince: null,
  }
}

/** Takes one sample in; returns its calibrated value where it may be used, else null. */
export function hear(channel: Channel, sample: TrackSample, config: KilnConfig, id: ChannelId): number | null {
  trackSample(channel.track, sample, config.calibration[id])
  if (sample.value === null) channel.faultSince ??= sample.t
  else {
    channel.faultSince = null
    if (sample.value !== channel.changedTo) {
      channel.changedTo = sample.value
      channel.changedAt = sample.t
    }
  }
  const { took } = channel.track
  if (took === null) return null
  channel.sum += took
  channel.count += 1
  return took
}
