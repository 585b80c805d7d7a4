import { createBroker } from '../../../server/mqtt/embedded.ts'
import { createSqliteStore } from '../../../server/storage/sqlite/store.ts'

// The path of a reading alone: gate, broker, journal. Started as a process of its own, so that it can be killed, traced and starved.
// Arguments: data folder, built thread program, port. Says `ready PORT` on standard output.

const [folder = '', program = '', port = '0'] = process.argv.slice(2)
const store = createSqliteStore({ folder, program, ballastBytes: 1 << 20 })
const { lastSeq } = await store.start()
let seq = lastSeq
const broker = createBroker({
  host: '127.0.0.1',
  port: Number(port),
  root: 'firing',
  site: 'yard',
  log: { info: () => {}, warn: () => {} },
  limits: { connectionsPerAddress: 200, messagesPerS: 1e6, burst: 1e6 },
  onMessage: async ({ topic, payload }) =>
    store.append([{ seq: ++seq, at: Date.now(), kind: 'message', kiln: null, topic, payload, retained: false }]),
})
const started = await broker.start()
process.stdout.write(`ready ${started.port}\n`)
process.on('SIGTERM', () => {
  void broker.stop().then(() => store.stop())
})
