import { mean } from '../firing/history.ts'
import { when } from './limit.ts'
import type { Scene, Tell } from './scene.ts'

/** Every minute of a sealed kiln: air that gets in, and fire that comes back. */
export function judgeSealed({ cooling, look, modelLeak }: Pick<Scene, 'cooling' | 'look' | 'modelLeak'>, tell: Tell): void {
  if (cooling === null) return
  const relit = cooling.relit ?? cooling.burnsOpen
  // that air gets in is no news of a kiln that stands open: there a rise is a fire
  const inside = cooling.opened !== null && relit !== null
  const because = inside ? [] : [...(cooling.rose ?? []), ...(cooling.slow ?? []), ...(modelLeak ? [{ code: 'model-says-leak' }] : [])]
  const known = mean(look.past.wall, 10) !== null
  tell({ alarm: 'air-leak', channel: null, sign: when(because.length > 0 ? true : known ? false : null), because })
  tell({
    alarm: 'reignition',
    channel: null,
    sign: when(relit !== null ? true : known ? false : null),
    because: relit ?? [],
  })
  tell({ alarm: 'wall-off', channel: null, sign: when(cooling.wallOff !== null), because: cooling.wallOff ?? [] })
}
