import type { Ms, NodeId } from '../../contract/fold.ts'
import { mean } from '../firing/history.ts'
import type { Channel } from '../firing/channel.ts'
import { when } from './limit.ts'
import type { Scene, Tell } from './scene.ts'

/** A channel is called lost after 60 s (wire format 7); by then the alarm has sounded (reliability 11.5), its rests and delays counted. */
const silentS = 40
const silentAfterS = (channel: Channel): number => Math.max(silentS, 6 * channel.track.periodS)

function isSilent(channel: Channel, at: Ms): boolean {
  const { heardMs } = channel.track
  return heardMs !== null && at - heardMs > silentAfterS(channel) * 1000
}

/** Every 10 s. Where a whole node is gone it is the node that is told, not each of its probes. */
export function judgeSilence(scene: Scene, tell: Tell): void {
  const { at } = scene.look
  const byNode = new Map<NodeId, { silent: number; all: number }>()
  for (const id in scene.channels) {
    const channel = scene.channels[id]
    if (channel === undefined || channel.role === null || channel.track.heardMs === null) continue
    const count = byNode.get(channel.node) ?? { silent: 0, all: 0 }
    count.all++
    if (isSilent(channel, at)) count.silent++
    byNode.set(channel.node, count)
  }
  const gone = new Set<NodeId>()
  for (const [node, { silent, all }] of byNode) {
    const willHeard = scene.lostNodes[node] !== undefined
    const lost = willHeard || (all > 1 && silent === all)
    if (lost) gone.add(node)
    tell({
      alarm: 'node-lost',
      channel: node,
      sign: when(lost),
      because: [{ code: willHeard ? 'node-said-lost' : 'node-silent', value: silent }],
      quiet: !scene.tended,
    })
  }
  for (const id in scene.channels) {
    const channel = scene.channels[id]
    if (channel === undefined || channel.role === null || channel.track.heardMs === null) continue
    tell({
      alarm: 'probe-silent',
      channel: id,
      sign: when(isSilent(channel, at)),
      because: [{ code: 'silent-for', value: (at - channel.track.heardMs) / 1000, limit: silentAfterS(channel), channel: id }],
      quiet: !scene.tended || gone.has(channel.node),
    })
  }
}

/** A kiln in fire never keeps one number this long; a converter that hangs does. Slow channels apart. Common practice, no source. */
const stuckMs = 45 * 60_000

/** Every minute. */
export function judgeStuck(scene: Scene, tell: Tell): void {
  const { at } = scene.look
  const hot = scene.phase !== 'idle' && scene.phase !== 'cold' && scene.phase !== 'cooling' && scene.phase !== 'failed'
  for (const id in scene.channels) {
    const channel = scene.channels[id]
    if (channel === undefined || channel.role === null || channel.changedAt === null) continue
    const slow = channel.role === 'ambient' || channel.role === 'bottle' || channel.role === 'co' || channel.track.periodS > 60
    const heard = channel.track.heardMs !== null && at - channel.track.heardMs < 120_000
    const stuck = hot && !slow && heard && channel.faultSince === null && at - channel.changedAt > stuckMs
    tell({
      alarm: 'probe-stuck',
      channel: id,
      sign: when(stuck),
      because: [{ code: 'same-for', value: (at - channel.changedAt) / 60_000, limit: 45, channel: id }],
      quiet: !scene.tended,
    })
  }
}

/** Every minute: orders of temperature that a burning kiln cannot have, and thermocouples with their legs crossed (instrument facts 1.5). */
export function judgeSwapped(scene: Scene, tell: Tell): void {
  const { past } = scene.look
  const firebox = mean(past.firebox, 5)
  const wall = mean(past.wall, 5)
  const outlet = mean(past.outlet, 5)
  const smoke = mean(past.smoke, 5)
  const pairs: [string, boolean | null][] = [
    // vapour leaves the pipe colder than it entered, and no part is hotter than the fire that heats it
    ['outlet-over-firebox', outlet === null || firebox === null ? null : outlet > 120 && outlet > firebox + 60],
    ['outlet-over-smoke', outlet === null || smoke === null ? null : outlet > 60 && outlet > smoke + 30],
    [
      'wall-over-firebox',
      wall === null || firebox === null ? null : wall > 250 && wall > firebox + 200 && scene.fire.established === false,
    ],
    [
      'legs-crossed',
      [firebox, wall, outlet, smoke].every((v) => v === null) ? null : [firebox, wall, outlet, smoke].some((v) => v !== null && v < -25),
    ],
  ]
  const found = pairs.filter(([, yes]) => yes === true).map(([code]) => ({ code }))
  const judged = pairs.some(([, yes]) => yes !== null)
  tell({ alarm: 'probe-swapped', channel: null, sign: when(judged ? found.length > 0 : null), because: found, quiet: !scene.tended })
}
