import type { ChannelId, KilnConfig } from '../../../../server/contract/fold.ts'
import { roles, type Role } from '../../../../server/contract/vocabulary.ts'

/** A firing cannot be followed without these. */
export const neededRoles = ['firebox', 'wall', 'outlet'] as const satisfies readonly Role[]

export interface Assignment {
  /** What to put into the kiln's roles; null takes one away. */
  patch: Record<ChannelId, Role | null>
  /** The probe that had the role before, and what it is now; null when nobody had it. */
  other: { channel: ChannelId; role: Role | null } | null
}

/** Gives a probe its place. Whoever had that place takes the place that became free: so two touches swap two probes. */
export function assign(current: KilnConfig['roles'], channel: ChannelId, role: Role): Assignment {
  const before = current[channel] ?? null
  const holder = Object.keys(current).find((one) => one !== channel && current[one] === role)
  if (holder === undefined) return { patch: { [channel]: role }, other: null }
  return { patch: { [channel]: role, [holder]: before }, other: { channel: holder, role: before } }
}

export const missingRoles = (current: KilnConfig['roles']): Role[] => neededRoles.filter((role) => !Object.values(current).includes(role))

/** The name of a probe as people say it: without the place, which is the same for all. */
export const probeName = (channel: ChannelId): string => channel.slice(channel.indexOf('/') + 1)

/** The place that a probe takes by its own name, if any. */
export function ownRole(channel: ChannelId): Role | null {
  const name = channel.slice(channel.lastIndexOf('/') + 1)
  return roles.find((role) => role === name) ?? null
}
