// Writes the demo firing anew: npm run demo-firing (only after a change of the simulator; a test holds file and code together).
import { writeFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'
import { demoText } from './demo-lines.ts'

const path = process.argv[2]
if (!path) {
  console.error('Usage: npm run demo-firing -- server/simulator/demo/demo-firing.jsonl.gz')
  process.exit(2)
}
writeFileSync(path, gzipSync(demoText(), { level: 9 }))
