import type { Ms } from '../../contract/fold.ts'
import type { Named } from './accept.ts'
import type { ChannelMemory, NodeMemory } from './state.ts'

/** A board warms slowly beside its chip; an older temperature is no better than the assumed one. Common practice, no source. */
const oldestBoardMs = 600_000
/** What a board survives (instrument facts 2.1: cold junction -55 to 127 °C). */
const coldestC = -55
const hottestC = 127

/** Whether the channel only carries the temperature of another channel's cold junction. */
export const isBoardChannel = ({ birth }: NodeMemory, channel: string): boolean => birth?.boards.includes(channel) ?? false

/** °C of the cold junction: from the same pack and time, else the last one heard; null where neither is to be had. */
export function boardTemperature(
  node: NodeMemory,
  { channel, record }: Named,
  memory: ChannelMemory,
  pack: readonly Named[],
  receivedMs: Ms,
): number | null {
  const name = node.birth?.channels.get(channel)?.coldJunction ?? null
  if (name === null) return null
  for (const other of pack) {
    const { value, timeS } = other.record
    if (other.channel !== name || timeS !== record.timeS || value === null || value < coldestC || value > hottestC) continue
    memory.board = { c: value, atMs: receivedMs }
    return value
  }
  return memory.board !== null && receivedMs - memory.board.atMs <= oldestBoardMs ? memory.board.c : null
}
