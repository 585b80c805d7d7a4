import { parseArgs } from 'node:util'
import { pureDoors } from './doors.ts'
import { liveDoors } from './live-doors.ts'
import { runDoor } from './run-door.ts'

const { values } = parseArgs({
  options: { seconds: { type: 'string', default: '60' }, seed: { type: 'string' }, door: { type: 'string', default: '' } },
})
const seed = Number(values.seed ?? Math.floor(Date.now() / 1000) % 100_000)
const live = await liveDoors()
const doors = [...pureDoors(), ...live.doors].filter(({ name }) => name.includes(values.door))
const share = (Number(values.seconds) * 1000) / doors.length
console.log(`seed ${seed}, ${doors.length} doors, ${values.seconds} s in all`)
let found = 0
for (const door of doors) {
  const until = performance.now() + share
  const { done, findings } = await runDoor(door, seed, () => performance.now() < until)
  found += findings.length
  console.log(`${door.name.padEnd(48)} ${String(done).padStart(9)} inputs, ${findings.length} findings`)
  for (const { index, what, input } of findings) {
    console.log(`  input ${index}: ${what}\n    ${JSON.stringify(input.subarray(0, 400).toString('latin1'))}`)
  }
}
await live.stop()
console.log(`${found} findings`)
process.exitCode = found === 0 ? 0 : 1
