import type { ChannelId, Ms } from '../contract/fold.ts'
import type { ProbeView } from '../contract/setup.ts'
import type { KilnInput } from '../domain/intake/types.ts'

type Sample = Extract<KilnInput, { kind: 'sample' }>

const trailMs = 90_000
const longestTrail = 120
const mostChannels = 256

/** What every probe said last and just before: for the roles of new probes and for calibrating, not for the firing. */
export class ProbeTrails {
  private readonly heard = new Map<ChannelId, ProbeView>()

  /** What was buffered by its node is no reading of now. */
  hear({ channel, t, value, quality, late }: Sample): void {
    const before = this.heard.get(channel)
    if (late || (before && before.t > t) || (!before && this.heard.size >= mostChannels)) return
    const trail = before?.trail ?? []
    if (value !== null) trail.push([t, value])
    while (trail.length > longestTrail || this.tooOld(trail[0], t)) trail.shift()
    this.heard.set(channel, { channel, t, value, quality, trail })
  }

  probes(): ProbeView[] {
    return [...this.heard.values()].map((probe) => ({ ...probe, trail: [...probe.trail] }))
  }

  private tooOld(first: [Ms, number] | undefined, now: Ms): boolean {
    return first !== undefined && now - first[0] > trailMs
  }
}
