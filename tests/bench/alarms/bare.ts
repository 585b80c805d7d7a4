import { createServer, type AddressInfo } from 'node:net'
import { setTimeout as pause } from 'node:timers/promises'
import { Aedes } from 'aedes'
import mqtt from 'mqtt'
import { startAround } from './around.ts'
import { Ear } from './ear.ts'

const say = (level: string, sound: number): string => JSON.stringify({ level, code: 'fire-dying', since: 0, sound, seq: 1 })

/** The same broker library, load and buzzer with nothing between: a message that is answered with `alert`. ms; null when it never came. */
export async function bare(alarms: number, readingsPerS: number, nodes: number): Promise<(number | null)[]> {
  const broker = await Aedes.createBroker()
  const server = createServer({ noDelay: true }, (socket) => broker.handle(socket))
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done))
  const { port } = server.address() as AddressInfo
  broker.on('publish', (packet, client) => {
    if (client === null || packet.topic !== 'firing/1/yard/n1/readings') return
    const payload = Buffer.from(packet.payload.toString() === 'dying' ? say('warning', 2) : say('none', 0))
    broker.publish({ cmd: 'publish', topic: 'firing/1/yard/server/alert', payload, qos: 1, retain: true, dup: false }, () => undefined)
  })
  const ear = new Ear(port)
  ear.start()
  const node = await mqtt.connectAsync(`mqtt://127.0.0.1:${port}`, { clientId: 'kiln' })
  const around = await startAround({ mqtt: port, http: 0 }, { readingsPerS, nodes, tablets: 0 })
  const took: (number | null)[] = []
  for (let n = 0; n < alarms; n++) {
    await pause(5)
    const told = ear.hear(2)
    const from = performance.now()
    void node.publishAsync('firing/1/yard/n1/readings', 'dying', { qos: 1 })
    const heardAt = await told
    took.push(heardAt === null ? null : heardAt - from)
    await node.publishAsync('firing/1/yard/n1/readings', 'well', { qos: 1 })
    await ear.hear(0)
  }
  await around.stop()
  await ear.stop()
  await node.endAsync(true)
  await new Promise<void>((done) => broker.close(done))
  server.close()
  return took
}
