import type { Reason } from '../../contract/fold.ts'
import { lowest, mean, quantile, slope } from '../firing/history.ts'
import type { Look } from '../firing/look.ts'
import { below, when } from './limit.ts'
import type { FireWatch, Scene, Tell } from './scene.ts'

export function startFire(): FireWatch {
  return { usualC: null, established: false, habitMin: null }
}

/** A fire that fell to this share of what it usually is, is dying: between feedings it keeps nine tenths. Common practice, no source. */
const dyingShare = 0.6
const deadBandK = 15 // instrument facts 6.3: wall and firebox 5 to 10, doubled for a flickering fire

export function stepFire(fire: FireWatch, look: Look): void {
  if (look.litAt === null) {
    fire.established = false
    return
  }
  fire.usualC = quantile(look.past.firebox, 180, 0.75)
  const steady = lowest(look.past.firebox, 5)
  if (steady !== null && steady >= look.config.limits.fireLowC + 30 && look.past.firebox.values.length >= 5) fire.established = true
  const feeds = look.facts.feeds
  if (feeds.length < 3) return
  const gaps = feeds
    .slice(-8)
    .map((at, i, last) => (i === 0 ? 0 : (at - (last[i - 1] ?? at)) / 60_000))
    .slice(1)
    .sort((a, b) => a - b)
  fire.habitMin = gaps[gaps.length >> 1] ?? null
}

/** Below this the fire is dying: a share of its own usual, within what the kiln's limits allow. */
export function dyingC(fire: FireWatch, look: Look): number {
  const { fireLowC, fireOutC } = look.config.limits
  const own = fire.usualC === null ? fireLowC : dyingShare * fire.usualC
  return Math.min(fireLowC + 50, Math.max(fireOutC + 50, own))
}

/** No word about the fire where the charge runs by itself, nor once sealing is due: who then feeds opens what may be closed already. */
export function fireIsWanted(scene: Scene): boolean {
  const { look, calls } = scene
  if (look.facts.stoppedFeedingAt !== null || look.facts.sealedAt !== null) return false
  if (calls.seal.state === 'due') return false
  return !(look.config.way === 'let-run' && calls['stop-feeding'].state === 'due')
}

/** Every good firebox sample. */
export function judgeFire(scene: Scene, fireboxC: number, tell: Tell): void {
  const { fire, look, board } = scene
  // what was told of a fire that turned out to be no firing still has to end
  const told = board.items['fire-dying']?.on === true || board.items['fire-out']?.on === true
  if (!fire.established && !told) return
  const quiet = !fireIsWanted(scene)
  const limit = dyingC(fire, look)
  const because: Reason[] = [{ code: 'firebox-under', value: fireboxC, limit }]
  const fed = look.facts.feeds.at(-1)
  if (fed !== undefined)
    because.push({ code: 'fed-before', value: (look.at - fed) / 60_000, ...(fire.habitMin === null ? {} : { limit: fire.habitMin }) })
  tell({ alarm: 'fire-dying', channel: null, sign: below(fireboxC, limit, deadBandK), because, quiet })
  const { fireOutC } = look.config.limits
  tell({
    alarm: 'fire-out',
    channel: null,
    sign: below(fireboxC, fireOutC, deadBandK),
    because: [{ code: 'firebox-under', value: fireboxC, limit: fireOutC }],
    quiet,
  })
}

/** The wall warms faster than fire gas can warm it through earth and wood: flame has got in. Steepest tight firing 240 K/h, on trials. */
const runawayKPerH = 600
export function judgeWall(scene: Scene, tell: Tell): void {
  const { past } = scene.look
  const wall = mean(past.wall, 2)
  const rate = slope(past.wall, 5)
  const fast = wall === null || rate === null ? null : wall > 120 && rate > runawayKPerH
  tell({
    alarm: 'flame-inside',
    channel: null,
    sign: when(fast),
    because: [{ code: 'wall-climbs', value: rate ?? 0, limit: runawayKPerH }],
  })
}

/** Smoke collapses towards the air while the fire burns on: nothing comes through the pipe. Needs a smoke probe. */
export function judgeVent(scene: Scene, tell: Tell): void {
  const { past } = scene.look
  const smoke = mean(past.smoke, 5)
  const before = mean(past.smoke, 10, 15)
  const air = mean(past.ambient, 10) ?? 30
  const fire = mean(past.firebox, 5)
  const fireBefore = mean(past.firebox, 10, 15)
  const judged = smoke !== null && before !== null && fire !== null && fireBefore !== null && before > air + 25
  const share = judged ? (smoke - air) / (before - air) : 1
  tell({
    alarm: 'vent-choked',
    channel: null,
    sign: when(judged ? share < 0.5 && fire > 0.9 * fireBefore : null),
    because: [{ code: 'smoke-collapsed', value: smoke ?? 0, limit: air + (before ?? 0) / 2 }],
  })
}
