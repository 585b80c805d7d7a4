import { createBroker } from '../../../server/mqtt/embedded.ts'
import { createSqliteStore } from '../../../server/storage/sqlite/store.ts'

// The path of a reading alone: gate, broker, journal. Started as a process of its own, so that it can be killed, traced and starved.
// Arguments: data folder, built thread program, port, host. Says `ready PORT` on standard output, and `lost NODE` for each will.
// SIGUSR2 lets its memory grow without end.

const [folder = '', program = '', port = '0', host = '127.0.0.1'] = process.argv.slice(2)
const store = createSqliteStore({ folder, program, ballastBytes: 1 << 20 })
const { lastSeq } = await store.start()
let seq = lastSeq
const broker = createBroker({
  host,
  port: Number(port),
  root: 'firing',
  site: 'yard',
  log: { info: () => {}, warn: () => {} },
  limits: { connectionsPerAddress: 200, messagesPerS: 1e6, burst: 1e6 },
  onMessage: async ({ topic, payload }) => {
    if (topic.endsWith('/state') && Buffer.from(payload).includes('lost')) process.stdout.write(`lost ${topic.split('/').at(-2) ?? ''}\n`)
    await store.append([{ seq: ++seq, at: Date.now(), kind: 'message', kiln: null, topic, payload, retained: false }])
  },
})
const started = await broker.start()
process.stdout.write(`ready ${started.port}\n`)
const hog: number[][] = []
process.on('SIGUSR2', () => setInterval(() => hog.push(new Array<number>(1 << 16).fill(Math.random())), 1))
process.on('SIGTERM', () => {
  void broker.stop().then(() => store.stop())
})
