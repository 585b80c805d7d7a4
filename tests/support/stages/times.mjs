// npm run ten-times [-- N]: the whole `npm test` N times in a row (ten), each with its seconds; ends at the first that fails, with its output.
import { spawnSync } from 'node:child_process'
import { explained } from '../explained.mjs'

explained(import.meta.url)

const times = Number(process.argv[2] ?? 10)
if (!Number.isInteger(times) || times < 1) {
  console.error(`how often? ${process.argv[2]} is no number of times`)
  process.exit(2)
}
const tookS = []
for (let n = 1; n <= times; n++) {
  const began = performance.now()
  const { status, stdout, stderr } = spawnSync('npm', ['test'], { encoding: 'utf8', maxBuffer: 1 << 28 })
  tookS.push(Math.round((performance.now() - began) / 1000))
  console.log(`${n} of ${times}: ${status === 0 ? 'green' : 'RED'} after ${tookS.at(-1)} s`)
  if (status === 0) continue
  console.log(`${stdout}${stderr}`)
  process.exit(1)
}
console.log(`green ${times} times in a row; ${Math.min(...tookS)} to ${Math.max(...tookS)} s`)
