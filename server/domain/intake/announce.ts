import type { Outcome } from './outcome.ts'
import type { KilnInput } from './types.ts'
import { isBoardChannel } from './board.ts'
import { channelMemory, keepChannel } from './state.ts'
import type { ChannelMemory, NodeMemory, Reading } from './state.ts'

/** After a birth document: period and step of each of its channels. */
export function tellBirth(node: NodeMemory, outcome: Outcome): void {
  for (const [name, born] of node.birth?.channels ?? []) {
    const channel = channelMemory(node, name)
    if (isBoardChannel(node, name) || !keepChannel(node, name, channel)) continue
    channel.periodS = born.periodS ?? channel.periodS
    channel.lsb = born.lsb ?? channel.lsb
    channel.told = true
    outcome.inputs.push(channelInput(node, name, channel))
  }
}

/** With a pack: what no birth document told, and what the pack's `ut` tells otherwise than was told. */
export function tellChannels(node: NodeMemory, updates: ReadonlyMap<string, number>, fresh: readonly Reading[], outcome: Outcome): void {
  for (const { channel: name } of fresh) {
    const channel = node.channels.get(name)
    if (channel === undefined) continue
    const periodS = updates.get(name) ?? channel.periodS
    if (channel.told && periodS === channel.periodS) continue
    channel.periodS = periodS
    channel.told = true
    outcome.inputs.push(channelInput(node, name, channel))
  }
}

function channelInput(node: NodeMemory, name: string, { periodS, lsb }: ChannelMemory): KilnInput {
  const told = { kind: 'channel' as const, channel: `${node.node}/${name}`, periodS, lsb }
  const kind = node.birth?.channels.get(name)?.kind
  if (kind === undefined) return told
  const { sensor, converter, linearised } = kind
  return { ...told, probe: { sensor, converter, linearised } }
}
