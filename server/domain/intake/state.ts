import type { Ms, NodeId, Quality } from '../../contract/fold.ts'
import type { NodeRemark, NodeView } from '../../contract/live.ts'
import type { Birth } from './birth.ts'
import { freshTrust, noEpoch } from './clock.ts'
import type { ClockTrust, EpochEstimate } from './clock.ts'
import { nothingSeen } from './identity.ts'
import type { Seen } from './identity.ts'

/** All that the intake remembers of a site. Bounded: so many nodes, boots, channels and samples, never more. */
export interface IntakeState {
  root: string
  site: string
  /** By node level of the topic, in order of first hearing. */
  nodes: Map<string, NodeMemory>
  /** Whether the folds were told that some node's clock is not to be believed. */
  clockSuspectTold: boolean
}

export interface NodeMemory {
  node: NodeId
  said: NodeView['state']
  told: 'up' | 'lost' | null
  lastHeardMs: Ms | null
  birth: Birth | null
  /** The boot that is running, as far as is known. */
  boot: number | null
  boots: Map<number, BootMemory>
  trust: ClockTrust
  channels: Map<string, ChannelMemory>
  held: HeldBoot[]
  samples: number
  duplicates: number
  conflicts: number
  /** Of the running boot; decides when a new boot number is asked for. */
  bootConflicts: number
  refused: Record<string, number>
  remarks: NodeRemark[]
}

export interface BootMemory {
  epoch: EpochEstimate
  /** Taken where the boot was never heard live: its samples are then uncertain in time. */
  assumedEpochMs: Ms | null
  /** Earliest sample whose time is sure. */
  firstMs: Ms | null
  seen: Seen
}

export interface ChannelMemory {
  periodS: number
  lsb: number
  told: boolean
  /** Last good number as sent, and when it came. */
  recent: { sent: number; atMs: Ms } | null
  /** Numbers in a row that the probe can not show. */
  beyondInRow: number
  /** Last board temperature, and when it came. */
  board: { c: number; atMs: Ms } | null
}

/** One record that was understood, not yet placed in time. */
export interface Reading {
  /** Place in its pack. */
  record: number
  channel: string
  /** Against the moment its pack was composed, s; negative: before. */
  relativeS: number
  /** By the node's own clock, where it has one. */
  absoluteMs: Ms | null
  quality: Quality
  raw: number | null
  value: number | null
  coldJunctionC: number | null
  /** What makes it the same as another: the number, or the fault word. */
  sent: number | string
}

/** Readings of a boot whose beginning is not known yet. */
export interface HeldBoot {
  boot: number
  sinceMs: Ms
  lastMs: Ms
  readings: { upS: number; reading: Reading }[]
}

/** Wire format, rule 7. */
export const usualPeriodS = 5
/** The coarsest step of a usual converter (instrument facts 2.1), where none is told. */
export const usualLsb = 0.25
const mostBoots = 4
const mostChannels = 64

export const newNode = (node: NodeId): NodeMemory => ({
  node,
  said: 'unknown',
  told: null,
  lastHeardMs: null,
  birth: null,
  boot: null,
  boots: new Map(),
  trust: freshTrust(),
  channels: new Map(),
  held: [],
  samples: 0,
  duplicates: 0,
  conflicts: 0,
  bootConflicts: 0,
  refused: {},
  remarks: [],
})

/** The memory of a boot; the oldest other one goes when there are too many. */
export function bootMemory(node: NodeMemory, boot: number): BootMemory {
  const known = node.boots.get(boot)
  if (known !== undefined) return known
  const memory: BootMemory = { epoch: noEpoch(), assumedEpochMs: null, firstMs: null, seen: nothingSeen() }
  node.boots.set(boot, memory)
  for (const old of node.boots.keys()) {
    if (node.boots.size <= mostBoots) break
    if (old !== node.boot && old !== boot) node.boots.delete(old)
  }
  return memory
}

/** What is known of a channel, else what a new one starts with; it is remembered by `keepChannel`. */
export function channelMemory(node: NodeMemory, channel: string): ChannelMemory {
  const known = node.channels.get(channel)
  if (known !== undefined) return known
  const born = node.birth?.channels.get(channel)
  const described = { periodS: born?.periodS ?? usualPeriodS, lsb: born?.lsb ?? usualLsb }
  return { ...described, told: false, recent: null, beyondInRow: 0, board: null }
}

/** False when the node has named more channels than a node can have. */
export function keepChannel(node: NodeMemory, channel: string, memory: ChannelMemory): boolean {
  if (node.channels.size >= mostChannels && !node.channels.has(channel)) return false
  node.channels.set(channel, memory)
  return true
}

export function remark(node: NodeMemory, what: NodeRemark): void {
  if (!node.remarks.includes(what)) node.remarks.push(what)
}
