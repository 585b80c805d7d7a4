import { createServer, type AddressInfo } from 'node:net'
import { Aedes } from 'aedes'
import { loadEngine } from '../../../server/storage/sqlite/engine.ts'

// The parts alone: broker, JSON, SQLite, socket. Every 5 ms one transaction with FULL, then the acknowledgements. Nothing is checked,
// numbered, summed, limited or kept apart.

const [folder = ''] = process.argv.slice(2)
const database = new (loadEngine().DatabaseSync)(`${folder}/bare.db`)
database.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL')
database.exec('CREATE TABLE reading (id INTEGER PRIMARY KEY, at REAL, topic TEXT, payload BLOB)')
const insert = database.prepare('INSERT INTO reading (at, topic, payload) VALUES (?, ?, ?)')
let waiting: { topic: string; payload: Uint8Array; done: () => void }[] = []

function commit(): void {
  const batch = waiting
  waiting = []
  database.exec('BEGIN')
  for (const { topic, payload } of batch) insert.run(Date.now(), topic, payload)
  database.exec('COMMIT')
  for (const { done } of batch) done()
}

const aedes = await Aedes.createBroker({
  authorizePublish: (_client, packet, done) => {
    JSON.parse(packet.payload.toString())
    if (waiting.length === 0) setTimeout(commit, 5)
    waiting.push({ topic: packet.topic, payload: packet.payload as Uint8Array, done: () => done(null) })
  },
})
const server = createServer({ noDelay: true }, aedes.handle)
server.listen(0, '127.0.0.1', () => process.stdout.write(`ready ${(server.address() as AddressInfo).port}\n`))
process.on('SIGTERM', () => process.exit(0))
