import { connect } from 'node:net'
import { connectPacket, publishPacket } from '../../integration/mqtt/raw-client.ts'

// Nodes in a process of their own: PORT NODES IN-FLIGHT SECONDS. Prints acknowledged messages a second and the 99th percentile, ms.

const [port = 0, nodes = 50, inFlight = 20, seconds = 8] = process.argv.slice(2).map(Number)
const waits: number[] = []
let counting = false

function node(name: string): void {
  const socket = connect({ host: '127.0.0.1', port, noDelay: true })
  const sentAt = new Float64Array(65_536)
  const pack = JSON.stringify([
    { bn: `yard/${name}/`, bu: 'Cel', n: 'outlet', v: 31.25, t: 0, ut: 5 },
    { n: 'wall', v: 352, t: 0 },
    { n: 'firebox', v: 640.5, t: 0 },
    { n: 'boot', u: 'count', v: 17 },
    { n: 'seq', u: 'count', v: 4211 },
    { n: 'up', u: 's', v: 21059.4 },
  ])
  const packet = publishPacket(`firing/1/yard/${name}/readings`, pack, 1, 1)
  const idAt = packet.indexOf('[') - 2
  let id = 0
  let held: Buffer = Buffer.alloc(0)
  const publish = () => {
    id = (id % 65_535) + 1
    const copy = Buffer.from(packet)
    copy.writeUInt16BE(id, idAt)
    sentAt[id] = performance.now()
    return copy
  }
  socket.on('connect', () => socket.write(connectPacket(name)))
  socket.on('data', (chunk: Buffer) => {
    held = held.length === 0 ? chunk : Buffer.concat([held, chunk])
    const out: Buffer[] = []
    let at = 0
    for (; at + 4 <= held.length; at += 4) {
      if (held[at] === 0x20) for (let n = 0; n < inFlight; n++) out.push(publish())
      else {
        if (counting) waits.push(performance.now() - (sentAt[held.readUInt16BE(at + 2)] ?? 0))
        out.push(publish())
      }
    }
    held = held.subarray(at)
    if (out.length > 0) socket.write(Buffer.concat(out))
  })
}

for (let n = 1; n <= nodes; n++) node(`n${n}`)
setTimeout(() => {
  counting = true
  setTimeout(() => {
    waits.sort((a, b) => a - b)
    console.log(JSON.stringify({ perSecond: waits.length / seconds, p99Ms: waits[Math.floor(waits.length * 0.99)] }))
    process.exit(0)
  }, seconds * 1000)
}, 1500)
