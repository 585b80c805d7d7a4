// Writes the demo firing anew: npm run demo-firing (after a change of the simulator or of the calls; tests hold file, script and calls together).
import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { gzipSync } from 'node:zlib'
import type { Call } from '../../../server/contract/vocabulary.ts'
import { kilnFold } from '../../../server/domain/firing/fold.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { playLines } from '../../../server/recordings/play.ts'
import { readRecording } from '../../../server/recordings/read.ts'
import { demoText, litMs } from '../../../server/simulator/demo/demo-lines.ts'
import type { Hours } from '../../../server/simulator/demo/tables/hours.ts'
import { asked } from '../asked.ts'

asked('Usage: npm run demo-firing\nWrites the demo firing anew, after a change of the simulator or of the calls.', () =>
  parseArgs({ options: {} }),
)

/** The four deeds in their order, the call that each follows, and how long after it a person has come and done it, min. */
const deeds = [
  { deed: 'start', call: 'start-collecting', afterMin: 4 },
  { deed: 'stop', call: 'stop-collecting', afterMin: 3 },
  { deed: 'seal', call: 'seal', afterMin: 8 },
  { deed: 'crack', call: 'open', afterMin: 15 },
] as const satisfies { deed: keyof Hours; call: Call; afterMin: number }[]

/** When a call is first given after `fromS` in a firing where the later deeds are still to come; seconds after lighting. */
function calledAt(hours: Hours, call: Call, fromS: number): number {
  const steps = playLines({ intake: intakeFold, kiln: kilnFold }, readRecording(Buffer.from(demoText(hours))))
  for (let step = steps.next(); !step.done; step = steps.next()) {
    for (const effect of step.value.effects) {
      if (effect.kind !== 'output' || effect.output.kind !== 'call') continue
      const { at, call: told, state } = effect.output
      if (told === call && state === 'due' && (at - litMs) / 1000 > fromS) return (at - litMs) / 1000
    }
  }
  console.log(demoText(hours).trimEnd().split('\n').at(-1)?.slice(0, 300))
  throw new Error(`nobody called ${call}: choose another firing`)
}

const hours: Hours = { start: null, stop: null, seal: null, crack: null }
let fromS = 0
for (const { deed, call, afterMin } of deeds) {
  const at = calledAt(hours, call, fromS)
  hours[deed] = fromS = Math.ceil((at + afterMin * 60) / 10) * 10
  console.log(`${call} called at ${(at / 3600).toFixed(2)} h, done at ${(hours[deed] / 3600).toFixed(2)} h`)
}
const home = 'server/simulator/demo'
writeFileSync(
  `${home}/tables/hours.ts`,
  `/** When the demo's person does what is called, seconds after lighting; made by \`npm run demo-firing\`, which listens to the calls. */
export const demoHours: Hours = { start: ${hours.start}, stop: ${hours.stop}, seal: ${hours.seal}, crack: ${hours.crack} }

export interface Hours {
  start: number | null
  stop: number | null
  seal: number | null
  crack: number | null
}
`,
)
writeFileSync(`${home}/demo-firing.jsonl.gz`, gzipSync(demoText(hours), { level: 9 }))
