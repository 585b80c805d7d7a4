import { createServer as createHttp } from 'node:http'
import { createServer, type AddressInfo } from 'node:net'
import { Aedes } from 'aedes'
import { WebSocketServer } from 'ws'

// The parts alone: broker, JSON, socket, a page that writes what comes. Nothing is stored, checked, judged or kept.

const page = `<!doctype html><title>bare</title><h1>Bare</h1>
${['firebox', 'wall', 'outlet'].map((role) => `<div data-role="${role}"><p class="number">–</p></div>`).join('')}
<script>
  new WebSocket('ws://' + location.host).onmessage = ({ data }) => {
    const { role, value } = JSON.parse(data)
    document.querySelector('[data-role="' + role + '"] .number').textContent = value
  }
</script>`

const http = createHttp((_request, response) => response.setHeader('content-type', 'text/html; charset=utf-8').end(page))
const sockets = new WebSocketServer({ server: http })
const aedes = await Aedes.createBroker({
  authorizePublish: (_client, packet, done) => {
    const pack = JSON.parse(packet.payload.toString()) as { n: string; v: number }[]
    for (const { n, v } of pack.slice(0, 1)) for (const socket of sockets.clients) socket.send(JSON.stringify({ role: n, value: v }))
    done(null)
  },
})
const broker = createServer({ noDelay: true }, aedes.handle)
const portOf = (server: { address(): unknown }): number => (server.address() as AddressInfo).port
http.listen(0, '127.0.0.1', () => broker.listen(0, '127.0.0.1', () => process.stdout.write(`ready ${portOf(http)} ${portOf(broker)}\n`)))
process.on('SIGTERM', () => process.exit(0))
