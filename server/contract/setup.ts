import type { ChannelId, KilnConfig, KilnId, Ms, NodeId, Quality } from './fold.ts'
import type { AlarmCode, Priority } from './vocabulary.ts'

// What the first run needs beside the live parts: every probe that is heard, where this box is found, and what a rehearsal came to.

/** Painted signs of kilns, for those who do not read; drawn by the page. */
export const signs = ['bird', 'fish', 'leaf', 'moon', 'star', 'pot', 'hill', 'hand'] as const
export type KilnSign = (typeof signs)[number]

/** One probe as it is heard, whether or not it has a role. */
export interface ProbeView {
  channel: ChannelId
  /** Linearised, before field calibration: °C (kg, ppm); null on a fault. */
  value: number | null
  quality: Quality
  t: Ms
  /** Good values of the last minute and a half, oldest first. */
  trail: [t: Ms, value: number][]
}

/** What a person said of the box's clock, and when. */
export interface ClockWord {
  right: boolean
  at: Ms
}

/** One node that was asked to beep. */
export interface BeepView {
  node: NodeId
  askedAt: Ms
  answer: 'waiting' | 'done' | 'cannot'
}

export const rehearsalScenes = ['probe', 'condenser', 'fire', 'service'] as const
export type RehearsalScene = (typeof rehearsalScenes)[number]

/** A rehearsal without fire: made-up readings through the same rules, heard on the real buzzers. */
export interface RehearsalView {
  scene: RehearsalScene
  /** `sounding`: an alarm stands; `silent`: the service holds its beat back; `over`: nothing is played any more. */
  state: 'preparing' | 'sounding' | 'silent' | 'over'
  /** Any of these should sound; empty for the silent service, of which only a buzzer can tell. */
  expected: AlarmCode[]
  /** What the rules told, and how long after the mishap by the kiln's time, s; null: nothing (yet). */
  told: { alarm: AlarmCode; priority: Priority; afterS: number } | null
  /** Buzzers in reach when it began. */
  buzzers: number
}

/** What a person heard of a rehearsal or of a sound test; null: there is none. */
export interface HeardWord {
  what: RehearsalScene | 'sound'
  tablet: boolean | null
  buzzer: boolean | null
  /** What the rules told; null where they told nothing, or where it was no rehearsal. */
  told: AlarmCode | null
  at: Ms
}

/** Alarms of a firing that is over: by the rules of today under the limits that it ran with, and under those that were asked about. */
export interface WhatIfAnswer {
  alarmed: number
  would: number
}

export interface SettingsChange {
  path: string
  from: unknown
  to: unknown
  at: Ms
  by: string
}

export interface SetupAnswer {
  now: Ms
  /** Minutes that local time is ahead of UTC where the box stands. */
  offsetMin: number
  clockSure: boolean
  clock: ClockWord | null
  /** Where nodes and tablets find this box; `mqttPort` is null where the broker is another's. */
  box: { addresses: string[]; mqttPort: number | null; root: string; site: string }
  probes: ProbeView[]
  /** What each kiln runs with now, roles that channels took by their name included. */
  kilns: Record<KilnId, KilnConfig>
  beeps: BeepView[]
  rehearsal: RehearsalView | null
  /** The newest of each. */
  heard: HeardWord[]
}

/** A topic that came and could not be used, as it was sent. */
export interface StrayTopic {
  topic: string
  reason: string
  times: number
}

/** What the broker turned away since it started. */
export interface TurnedAway {
  /** Connections and messages by reason. */
  reasons: Readonly<Record<string, number>>
  /** The one heard last first; a bounded list. */
  topics: StrayTopic[]
  /** How often a topic of the list gave way to a newer one. */
  pushedOut: number
}
