// One flood, in a process of its own: NAME MQTT-PORT SECONDS. What each class gets stands in reliability, section 5. Prints how often it struck.
import { connect, type Socket } from 'node:net'
import { connectPacket, publishPacket } from '../../integration/mqtt/raw-client.ts'

const [name = '', mqttPort = 0, seconds = 0] = process.argv.slice(2).map((word, place) => (place === 0 ? word : Number(word))) as [
  string,
  number,
  number,
]
const ends = performance.now() + seconds * 1000
let struck = 0

/** From an address of their own, as the good nodes have theirs. */
function open(localAddress: string, onOpen: (socket: Socket) => void): Socket {
  const socket = connect({ host: '127.0.0.1', port: mqttPort, localAddress, noDelay: true }, () => {
    struck++
    onOpen(socket)
  })
  socket.on('error', () => undefined)
  socket.on('data', () => undefined)
  return socket
}
const attacker = '127.0.7.1'
const again = (turn: () => void, everyMs: number): void => {
  const timer = setInterval(() => (performance.now() < ends ? turn() : clearInterval(timer)), everyMs)
}
const subscribe = (id: number, filter: string): Buffer =>
  Buffer.concat([Buffer.from([0x82, filter.length + 5, id >> 8, id & 255, 0, filter.length]), Buffer.from(filter), Buffer.from([0])])

/** Writes as fast as the other side takes it. */
function pour(socket: Socket, bytes: () => Buffer): void {
  const more = () => {
    while (performance.now() < ends && !socket.destroyed) {
      struck++
      if (!socket.write(bytes())) return void socket.once('drain', more)
      if (struck % 200 === 0) return void setImmediate(more)
    }
  }
  more()
}

const floods: Record<string, () => void> = {
  'silent connections': () => again(() => open(attacker, () => undefined), 2),
  'connections that come and go': () => again(() => open(attacker, (socket) => socket.end(connectPacket('comes-and-goes'))), 4),
  'a node that sends without end': () => {
    open(attacker, (socket) => {
      socket.write(connectPacket('loud'))
      pour(socket, () => publishPacket('firing/1/yard/loud/readings', '{"x":1}', 1, (struck % 65_000) + 1))
    })
  },
  'packs that are no packs': () => {
    open(attacker, (socket) => {
      socket.write(connectPacket('babbles'))
      pour(socket, () => publishPacket('firing/1/yard/babbles/readings', '[{"bn":', 1, (struck % 65_000) + 1))
    })
  },
  'retained topics without end': () => {
    open(attacker, (socket) => {
      socket.write(connectPacket('keeps'))
      pour(socket, () => {
        const packet = publishPacket(`firing/1/yard/keeps/info${struck}`, 'x'.repeat(1000), 0)
        packet[0] = 0x31
        return packet
      })
    })
  },
  'two with one name': () => again(() => open(attacker, (socket) => socket.write(connectPacket('twin'))), 20),
  'subscriptions without end': () => {
    open(attacker, (socket) => {
      socket.write(connectPacket('curious'))
      pour(socket, () => subscribe((struck % 65_000) + 1, `firing/1/yard/curious/${struck}`))
    })
  },
  'packets too large': () =>
    again(
      () =>
        open(attacker, (socket) => void socket.write(Buffer.concat([connectPacket('large'), Buffer.from([0x30, 0xff, 0xff, 0xff, 0x7f])]))),
      10,
    ),
  noise: () =>
    again(
      () =>
        open(attacker, (socket) => void socket.write(Buffer.from(Array.from({ length: 512 }, (_, i) => (i * 197 + struck * 31) & 255)))),
      5,
    ),
  'one that never reads': () => {
    const socket = connect({ host: '127.0.0.1', port: mqttPort, localAddress: attacker }, () => {
      socket.pause()
      socket.write(connectPacket('deaf'))
      pour(socket, () => Buffer.from([0xc0, 0]))
    })
    socket.on('error', () => undefined)
  },
}
if (name === 'names') console.log(JSON.stringify(Object.keys(floods)))
else {
  floods[name]?.()
  setTimeout(
    () => {
      console.log(struck)
      process.exit(0)
    },
    seconds * 1000 + 100,
  )
}
