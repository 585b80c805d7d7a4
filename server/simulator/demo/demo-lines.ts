import { recordingOf } from '../firing/recording.ts'
import { burn } from '../firing/world.ts'
import { demoActs } from './demo-acts.ts'
import { demoPlan } from './demo-plan.ts'
import { demoHours } from './tables/hours.ts'
import type { Hours } from './tables/hours.ts'

/** ms */
export const litMs = Date.UTC(2026, 2, 14, 6)

/** The demo firing as the text of a recording file: the same bytes every time. */
export function demoText(hours: Hours = demoHours): string {
  const firing = burn(demoPlan(hours.seal))
  const { acts, untilS } = demoActs(firing, hours)
  const lines = recordingOf(firing, {
    title: 'Demo data: an ordinary firing of an invented kiln',
    litMs,
    node: 'demo/n1',
    demo: true,
    acts,
    untilS,
  })
  return lines.map((line) => JSON.stringify(line)).join('\n') + '\n'
}
