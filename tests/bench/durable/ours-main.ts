import { createBroker } from '../../../server/mqtt/embedded.ts'
import { createSqliteStore } from '../../../server/storage/sqlite/store.ts'

// The path of a reading in the service: gate, topics, journal with sums in its own thread, acknowledgement; then JSON, as the bare parts.

const [folder = '', program = ''] = process.argv.slice(2)
const store = createSqliteStore({ folder, program })
const { lastSeq } = await store.start()
let seq = lastSeq
const broker = createBroker({
  host: '127.0.0.1',
  port: 0,
  root: 'firing',
  site: 'yard',
  log: { info: () => {}, warn: () => {} },
  limits: { connectionsPerAddress: 200, messagesPerS: 1e6, burst: 1e6 },
  onMessage: async ({ topic, payload }) => {
    await store.append([{ seq: ++seq, at: Date.now(), kind: 'message', kiln: null, topic, payload, retained: false }])
    JSON.parse(Buffer.from(payload.buffer, payload.byteOffset, payload.length).toString())
  },
})
const { port } = await broker.start()
process.stdout.write(`ready ${port}\n`)
process.on('SIGTERM', () => process.exit(0))
