import mqtt from 'mqtt'

// A node that keeps what was not acknowledged and sends it again when it is back. Arguments: host, port, name, messages, ms between them,
// keepalive s. Says `acknowledged N` for each and `done` when all are.

const [host = '', port = '', name = 'n1', count = '10', everyMs = '100', keepaliveS = '2'] = process.argv.slice(2)
const base = `firing/1/yard/${name}`
const client = mqtt.connect(`mqtt://${host}:${port}`, {
  clientId: name,
  clean: false,
  keepalive: Number(keepaliveS),
  reconnectPeriod: 200,
  connectTimeout: 2000,
  will: { topic: `${base}/state`, payload: Buffer.from('{"s":"lost"}'), qos: 1, retain: true },
})
client.on('error', () => {})
let sent = 0
let acknowledged = 0
const sending = setInterval(() => {
  const n = ++sent
  if (n >= Number(count)) clearInterval(sending)
  client.publish(`${base}/readings`, `{"wall":${n}}`, { qos: 1 }, (error) => {
    if (error) return
    process.stdout.write(`acknowledged ${n}\n`)
    if (++acknowledged < Number(count)) return
    process.stdout.write('done\n')
    client.end(true, () => process.exit(0))
  })
}, Number(everyMs))
