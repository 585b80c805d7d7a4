// What goes on around an alarm, in a process of its own: MQTT-PORT HTTP-PORT READINGS-A-SECOND NODES TABLETS. Prints `ready`; ends with its
// input and then prints what was acknowledged and what the tablets heard.
import { connect } from 'node:net'
import WebSocket from 'ws'
import { connectPacket, publishPacket } from '../../integration/mqtt/raw-client.ts'

const [mqttPort = 0, httpPort = 0, readingsPerS = 0, nodes = 0, tablets = 0] = process.argv.slice(2).map(Number)
/** The gate takes 20 connections from one address, and 200 in all. */
const fromOneAddress = 20
const mostSockets = 180
const channels = 10
const turnMs = 50
let acknowledged = 0
let heard = 0

function pack(node: string, seq: number): string {
  const values = Array.from({ length: channels }, (_, c) => ({ n: `x${c}`, v: 20 + ((seq + c) % 50), t: 0 }))
  const counts = [
    ['boot', 1],
    ['seq', seq],
  ].map(([n, v]) => ({ n, u: 'count', v }))
  return JSON.stringify([
    { bn: `yard/${node}/`, bu: 'Cel', ut: 1, ...values[0] },
    ...values.slice(1),
    ...counts,
    { n: 'up', u: 's', v: seq },
  ])
}

/** One connection that speaks for some nodes, each once in `everyMs`; comes back a second after it was closed. */
function speak(number: number, names: readonly string[], everyMs: number): void {
  const socket = connect({
    host: '127.0.0.1',
    port: mqttPort,
    noDelay: true,
    localAddress: `127.0.0.${2 + Math.floor(number / fromOneAddress)}`,
  })
  let open = false
  let id = 0
  socket.on('connect', () => socket.write(connectPacket(`around${number}`)))
  socket.on('data', (chunk: Buffer) => {
    for (let at = 0; at + 4 <= chunk.length; at += 4) {
      if (chunk[at] === 0x20) open = true
      else if (chunk[at] === 0x40) acknowledged++
    }
  })
  const turns = names.map((name, i) =>
    setTimeout(
      () => {
        const publish = () => {
          if (!open) return
          id = (id % 65_535) + 1
          socket.write(publishPacket(`firing/1/yard/${name}/readings`, pack(name, Math.floor(performance.now() / everyMs) + 1), 1, id))
        }
        publish()
        timers.push(setInterval(publish, everyMs))
      },
      turnMs + ((number + i / names.length) * everyMs) / Math.max(1, Math.min(nodes, mostSockets)),
    ),
  )
  const timers: NodeJS.Timeout[] = []
  socket.on('error', () => undefined)
  socket.on('close', () => {
    for (const timer of [...turns, ...timers]) clearInterval(timer)
    setTimeout(() => speak(number, names, everyMs), 1000)
  })
}

/** A page that looks on, and answers each beat as a page's script does. */
function watch(): void {
  const socket = new WebSocket(`ws://127.0.0.1:${httpPort}/live`)
  socket.on('message', (data: Buffer) => {
    heard++
    const text = data.toString()
    if (text.includes('"type":"beat"'))
      socket.send(JSON.stringify({ type: 'echo', n: (JSON.parse(text) as { n: number }).n, visible: true }))
  })
}

const sockets = Math.min(nodes, mostSockets)
for (let s = 0; s < sockets; s++) {
  const names = Array.from({ length: nodes }, (_, n) => n).filter((n) => n % sockets === s)
  speak(
    s,
    names.map((n) => `around${n}`),
    (1000 * nodes * channels) / readingsPerS,
  )
}
for (let t = 0; t < tablets; t++) watch()
const began = performance.now()
setTimeout(() => console.log('ready'), 2000)
process.stdin.resume()
process.stdin.on('end', () => {
  const seconds = (performance.now() - began) / 1000
  console.log(JSON.stringify({ readingsPerS: (acknowledged * channels) / seconds, partsPerS: heard / seconds }))
  process.exit(0)
})
