import { spawn, spawnSync } from 'node:child_process'
import type { AddressInfo } from 'node:net'
import { createServer } from 'node:net'
import { Aedes } from 'aedes'
import { expect, it } from 'vitest'

const root = new URL('../../../', import.meta.url).pathname
const command = (...args: string[]) => ['server/launch.mjs', 'simulate', ...args]

it('refuses a flag that it does not know: one sentence, status 2', () => {
  const run = spawnSync('node', command('--colour', 'red'), { cwd: root, encoding: 'utf8' })
  expect(run.status).toBe(2)
  expect(run.stderr.trim().split('\n')).toHaveLength(1)
  expect(run.stderr).toContain('--colour')
  expect(run.stdout).toBe('')
})

it('explains itself', () => {
  const run = spawnSync('node', command('--help'), { cwd: root, encoding: 'utf8' })
  expect(run.status).toBe(0)
  expect(run.stdout).toContain('--broker')
})

it('plays a part of the demo firing against any broker and ends by itself', async () => {
  const broker = await Aedes.createBroker()
  const server = createServer(broker.handle)
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const packs: string[] = []
  broker.on('publish', (packet, client) => {
    if (client && packet.topic === 'firing/1/yard/k2/readings') packs.push(packet.payload.toString())
  })
  const { port } = server.address() as AddressInfo
  const file = 'server/simulator/demo/demo-firing.jsonl.gz'
  const args = command(
    '--broker',
    `mqtt://127.0.0.1:${port}`,
    '--node',
    'k2',
    '--firing',
    file,
    '--from',
    '2h',
    '--to',
    '2.25h',
    '--speed',
    '600',
  )
  const child = spawn('node', args, { cwd: root })
  let out = ''
  child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()))
  const status = await new Promise((resolve) => child.on('exit', resolve))
  expect(status).toBe(0)
  expect(packs.length).toBe(90)
  expect(out).toContain('"event":"act"')
  expect(out.trim().split('\n').at(-1)).toContain('"event":"end"')
  await new Promise<void>((resolve) => broker.close(() => resolve()))
  server.close()
})
