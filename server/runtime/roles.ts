import type { ChannelId, KilnConfig } from '../contract/fold.ts'
import { roles } from '../contract/vocabulary.ts'
import type { Role } from '../contract/vocabulary.ts'

/** The role that a channel's own name gives it, if any. */
export function roleByName(channel: ChannelId): Role | null {
  const name = channel.slice(channel.lastIndexOf('/') + 1)
  return roles.find((role) => role === name) ?? null
}

/** The role of a channel at a kiln as set, null where none was set. */
export function roleAt(config: KilnConfig, channel: ChannelId): Role | null {
  return config.roles[channel] ?? null
}

/**
 * A channel named after a role takes that role by itself: at the first kiln where no other channel has it.
 * Null where the name is no role or the role is taken everywhere.
 */
export function claim<S extends { config: KilnConfig }>(sessions: Iterable<S>, channel: ChannelId): { session: S; role: Role } | null {
  const role = roleByName(channel)
  if (role === null) return null
  for (const session of sessions) if (!Object.values(session.config.roles).includes(role)) return { session, role }
  return null
}

/**
 * The channel that took a role by its own name and has fallen silent since: it must give way to one of that name that speaks.
 * Null where the holder speaks, or was given the role by a person.
 */
export function silentHolder(config: KilnConfig, role: Role, isSilent: (channel: ChannelId) => boolean): ChannelId | null {
  const holder = Object.keys(config.roles).find((channel) => config.roles[channel] === role)
  return holder !== undefined && roleByName(holder) === role && isSilent(holder) ? holder : null
}

/** Roles after a change of the settings: as set there, and those that other channels took by their own name where they are still free. */
export function rolesAfter(current: KilnConfig['roles'], wanted: KilnConfig['roles']): KilnConfig['roles'] {
  const set = new Set(Object.values(wanted))
  const claimed = Object.entries(current).filter(
    ([channel, role]) => !(channel in wanted) && roleByName(channel) === role && !set.has(role),
  )
  return { ...Object.fromEntries(claimed), ...wanted }
}
