import { judgeDry } from './condenser.ts'
import { judgeVent, judgeWall } from './fire.ts'
import { above, when } from './limit.ts'
import { judgeSilence, judgeStuck, judgeSwapped } from './probes.ts'
import type { Scene, Tell } from './scene.ts'
import { judgeSealed } from './sealed.ts'

/** Every sample of a carbon monoxide probe, ppm (trade facts 7.1.2). */
export function judgeCo(scene: Scene, ppm: number, tell: Tell): void {
  const { coCautionPpm, coLeavePpm } = scene.look.config.limits
  const leave = ppm >= coLeavePpm
  tell({
    alarm: 'co-high',
    channel: null,
    sign: above(ppm, coCautionPpm, coCautionPpm / 5),
    because: [{ code: 'co-over', value: ppm, limit: leave ? coLeavePpm : coCautionPpm }],
    priority: leave ? 'urgent' : 'warning',
  })
}

/** Every 10 s. */
export function judgeEvery10s(scene: Scene, tell: Tell): void {
  judgeSilence(scene, tell)
  const armed = scene.look.facts.armedAt !== null
  tell({
    alarm: 'stop-overdue',
    channel: null,
    sign: when(armed && scene.calls['stop-collecting'].state === 'due'),
    because: scene.calls['stop-collecting'].because,
  })
  tell({ alarm: 'seal-overdue', channel: null, sign: when(armed && scene.calls.seal.state === 'due'), because: scene.calls.seal.because })
}

/** Every minute. */
export function judgeEveryMinute(scene: Scene, tell: Tell): void {
  judgeDry(scene, tell)
  judgeWall(scene, tell)
  judgeVent(scene, tell)
  judgeStuck(scene, tell)
  judgeSwapped(scene, tell)
  judgeSealed(scene, tell)
}
