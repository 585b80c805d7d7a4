import mqtt from 'mqtt'

// A node that keeps what was not acknowledged and sends it again, oldest first, when it is back; by itself, as a board does, for the queue of
// the client library forgets some of it when two lines fail one after the other. Arguments: host, port, name, messages, ms between them,
// keepalive s. Says `acknowledged N` for each and `done` when all are.

const [host = '', port = '', name = 'n1', count = '10', everyMs = '100', keepaliveS = '2'] = process.argv.slice(2)
const base = `firing/1/yard/${name}`
const kept = new Set<number>()
let client: mqtt.MqttClient | null = null
let sent = 0

function send(by: mqtt.MqttClient, n: number): void {
  by.publish(`${base}/readings`, `{"wall":${n}}`, { qos: 1 }, (error) => {
    if (error || !kept.delete(n)) return
    process.stdout.write(`acknowledged ${n}\n`)
    if (kept.size > 0 || sent < Number(count)) return
    process.stdout.write('done\n')
    by.end(true, () => process.exit(0))
  })
}

function comeIn(): void {
  const fresh = mqtt.connect(`mqtt://${host}:${port}`, {
    clientId: name,
    clean: false,
    keepalive: Number(keepaliveS),
    reconnectPeriod: 0,
    connectTimeout: 2000,
    will: { topic: `${base}/state`, payload: Buffer.from('{"s":"lost"}'), qos: 1, retain: true },
  })
  fresh.on('error', () => {})
  fresh.on('connect', () => {
    client = fresh
    for (const n of kept) send(fresh, n)
  })
  fresh.once('close', () => {
    client = null
    setTimeout(comeIn, 200)
  })
}
comeIn()
const sending = setInterval(() => {
  const n = ++sent
  if (n >= Number(count)) clearInterval(sending)
  kept.add(n)
  if (client !== null) send(client, n)
}, Number(everyMs))
