import type { Ms } from '../../contract/fold.ts'
import type { Named } from './accept.ts'
import type { NodeMemory } from './state.ts'

/** A board warms slowly beside its chip; an older temperature is no better than the assumed one. Common practice, no source. */
const oldestBoardMs = 600_000
/** What a board survives (instrument facts 2.1: cold junction -55 to 127 °C). */
const coldestC = -55
const hottestC = 127

/** Whether the channel only carries the temperature of another channel's cold junction. */
export function isBoardChannel(node: NodeMemory, channel: string): boolean {
  if (node.birth === null || node.birth.channels.has(channel)) return false
  for (const { coldJunction } of node.birth.channels.values()) if (coldJunction === channel) return true
  return false
}

/** °C of the cold junction: from the same pack and time, else the last one heard; null where neither is to be had. */
export function boardTemperature(node: NodeMemory, record: Named, pack: readonly Named[], receivedMs: Ms): number | null {
  const name = node.birth?.channels.get(record.channel)?.coldJunction ?? null
  const memory = node.channels.get(record.channel)
  if (name === null || memory === undefined) return null
  const beside = pack.find((other) => other.channel === name && other.timeS === record.timeS)
  if (beside?.value !== null && beside?.value !== undefined && beside.value >= coldestC && beside.value <= hottestC) {
    memory.board = { c: beside.value, atMs: receivedMs }
    return beside.value
  }
  return memory.board !== null && receivedMs - memory.board.atMs <= oldestBoardMs ? memory.board.c : null
}
