import { connect } from 'node:net'
import { connectAsync } from 'mqtt'
import { expect, it } from 'vitest'
import { Dice, mutated } from '../../fuzz/mutate.ts'
import { packetSeeds } from '../../fuzz/seeds.ts'
import { quietBroker } from './quiet-broker.ts'
import { connectPacket } from './raw-client.ts'

/** `npm run bad-input` sends 100,000. */
const packets = Number(process.env['MUTATED'] ?? 400)
const atOnce = 16
const seed = 3
const hangMs = 30_000

/** Says it all, hangs up, and waits until the broker has hung up too. */
function played(port: number, bytes: Buffer): Promise<boolean> {
  return new Promise((resolve) => {
    const socket = connect({ host: '127.0.0.1', port }, () => socket.end(bytes))
    const late = setTimeout(() => {
      socket.destroy()
      resolve(false)
    }, hangMs)
    socket.on('data', () => {}).on('error', () => {})
    socket.on('close', () => {
      clearTimeout(late)
      resolve(true)
    })
  })
}

it(`${packets} changed packets, each over a connection of its own: nothing hangs, memory stays, a good node is served`, async () => {
  const broker = quietBroker({ limits: { connectionsPerAddress: 200, takeoversPerMin: 1e9 } })
  const port = (await broker.start()).port ?? 0
  const good = await connectAsync(`mqtt://127.0.0.1:${port}`, { clientId: 'well-behaved', reconnectPeriod: 0 })
  let hung = 0
  let next = 0
  let settled = 0
  const sender = async () => {
    for (let index = next++; index < packets; index = next++) {
      const dice = new Dice(seed * 1_000_003 + index)
      const packet = mutated(packetSeeds, dice)
      if (!(await played(port, dice.below(3) === 0 ? packet : Buffer.concat([connectPacket(`m${index % 100}`), packet])))) hung++
      if (index % 200 === 0) await good.publishAsync('firing/1/yard/well-behaved/readings', '{"outlet":81.5}', { qos: 1 })
      // what the first hundreds warm up is no growth
      if (index === Math.min(5000, Math.floor(packets / 2))) settled = process.memoryUsage().rss
    }
  }
  await Promise.all(Array.from({ length: atOnce }, sender))
  const grownMb = (process.memoryUsage().rss - settled) / 1e6
  console.info(`mutated packets at the broker: ${packets}, ${hung} hung, memory ${grownMb < 0 ? '' : '+'}${grownMb.toFixed(0)} MB`)
  expect(hung).toBe(0)
  expect(good.connected).toBe(true)
  expect(grownMb).toBeLessThan(50)
  await expect.poll(() => broker.clients()).toEqual(['well-behaved'])
  await good.endAsync(true)
  await broker.stop()
})
