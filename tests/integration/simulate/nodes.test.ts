import type { AddressInfo } from 'node:net'
import { createServer } from 'node:net'
import { Aedes } from 'aedes'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import type { KilnInput, Refusal } from '../../../server/domain/intake/types.ts'
import { makeFiring } from '../../../server/simulator/firing/world.ts'
import type { Fault } from '../../../server/simulator/nodes/faults.ts'
import { faultsOf } from '../../../server/simulator/nodes/faults.ts'
import { Player } from '../../../server/simulator/nodes/player.ts'
import { VirtualNode } from '../../../server/simulator/nodes/virtual-node.ts'
import { scriptOfWorld } from '../../../server/simulator/nodes/world-script.ts'

interface Heard {
  topic: string
  text: string
  atMs: number
  retain: boolean
}

let broker: Aedes
let server: ReturnType<typeof createServer>
const heard: Heard[] = []

beforeAll(async () => {
  broker = await Aedes.createBroker()
  server = createServer(broker.handle)
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  broker.on('publish', (packet, client) => {
    if (client || packet.topic.endsWith('/state')) {
      heard.push({ topic: packet.topic, text: packet.payload.toString(), atMs: Date.now(), retain: packet.retain })
    }
  })
})
afterAll(async () => {
  await new Promise<void>((resolve) => broker.close(() => resolve()))
  server.close()
})

const firing = makeFiring('nodes-1', { family: 'pieces', kind: 'ordinary' })
const script = scriptOfWorld(firing)

/** Plays ten firing minutes in about two seconds; gives what the intake fold made of it. */
async function play(name: string, faults: Fault[], clock: 'none' | 'ntp' = 'none', toS = 600) {
  const { port } = server.address() as AddressInfo
  const told: Record<string, unknown>[] = []
  const own = { ...script, clock }
  const speed = 300
  const node = new VirtualNode({
    broker: `mqtt://127.0.0.1:${port}`,
    root: 'firing',
    site: 'yard',
    node: name,
    script: own,
    faults,
    speed,
    boot: 7,
    now: Date.now,
    tell: (event) => told.push(event),
  })
  node.start()
  while (!node.heard) await new Promise((resolve) => setTimeout(resolve, 10))
  await new Player({ nodes: [{ node, script: own }], speed, fromS: 0, toS, now: Date.now, tell: () => {} }).run()
  // whoever was cut off comes back and brings what it kept
  for (let n = 0; n < 300 && !node.heard; n++) await new Promise((resolve) => setTimeout(resolve, 10))
  await node.stop()
  const mine = heard.filter(({ topic }) => topic.startsWith(`firing/1/yard/${name}/`))
  let state = intakeFold.start({ root: 'firing', site: 'yard' })
  const inputs: KilnInput[] = []
  const refused: Refusal[] = []
  const commands: string[] = []
  mine.forEach(({ topic, text, atMs }, seq) => {
    const result = intakeFold.step(state, { seq, at: atMs, topic, payload: Buffer.from(text), retained: false })
    state = result.state
    inputs.push(...result.inputs)
    refused.push(...result.refused)
    commands.push(...result.commands.map(({ why }) => why))
  })
  const samples = inputs.filter((input) => input.kind === 'sample')
  return { mine, samples, refused, commands, told, view: intakeFold.view(state)[0], counts: node.counts }
}

const kindOf = ({ topic }: Heard) => topic.split('/').at(-1)
const wall = 'yard/NODE/wall'

describe('a virtual node', () => {
  it('is born, speaks and says goodbye as the wire format asks', async () => {
    const { mine, samples, refused, counts } = await play('plain', [])
    expect(mine.map(kindOf).slice(0, 2)).toEqual(['info', 'state'])
    expect(JSON.parse(mine[1]?.text ?? '')).toEqual({ s: 'ready', boot: 7 })
    expect(mine.slice(0, 2).every(({ retain }) => retain)).toBe(true)
    expect(JSON.parse(mine.at(-1)?.text ?? '')).toEqual({ s: 'disconnected', boot: 7 })
    expect(refused).toEqual([])
    expect(counts).toMatchObject({ live: 61, backlog: 0, lost: 0 })
    const walls = samples.filter(({ channel }) => channel === wall.replace('NODE', 'plain'))
    expect(walls).toHaveLength(61)
    expect(walls.every(({ late, value }) => !late && value !== null)).toBe(true)
  })

  it('with a clock is taken at its word', async () => {
    const { refused, view, samples } = await play('clocked', [], 'ntp')
    expect(refused).toEqual([])
    expect(view?.clock).toBe('ntp')
    expect(samples.length).toBeGreaterThan(150)
  })

  it('dies without goodbye: the will tells it, and nothing is invented for the gap', async () => {
    const { mine, counts, samples } = await play('dying', faultsOf('node-lost@100s+200s'))
    expect(mine.filter((m) => kindOf(m) === 'state').map(({ text }) => (JSON.parse(text) as { s: string }).s)).toContain('lost')
    expect(counts.lost).toBeGreaterThanOrEqual(19)
    expect(samples.filter(({ channel }) => channel === 'yard/dying/wall').length).toBeLessThanOrEqual(42)
  })

  it('keeps what it measured while cut off and brings it as backlog, oldest first, nothing lost', async () => {
    const { mine, counts, samples, refused } = await play('kept', faultsOf('backlog@100s+200s'), 'none', 900)
    expect(refused).toEqual([])
    expect(counts.lost).toBe(0)
    expect(counts.backlog).toBeGreaterThanOrEqual(19)
    const seqs = mine
      .filter((m) => kindOf(m) === 'backlog')
      .map(({ text }) => (JSON.parse(text) as { n: string; v: number }[]).find(({ n }) => n === 'seq')?.v ?? NaN)
    expect(seqs).toEqual([...seqs].sort((a, b) => a - b))
    const walls = samples.filter(({ channel }) => channel === 'yard/kept/wall')
    expect(walls).toHaveLength(91)
    expect(walls.filter(({ late }) => late).length).toBeGreaterThanOrEqual(19)
  })

  it('starts anew with a new boot number', async () => {
    const { mine, refused, view } = await play('reborn', faultsOf('reboot@200s'))
    const boots = mine.filter((m) => kindOf(m) === 'info').map(({ text }) => (JSON.parse(text) as { boot: number }).boot)
    expect(boots).toEqual([7, 8])
    expect(refused).toEqual([])
    expect(view?.conflicts).toBe(0)
  })

  it('says a pack twice: counted, harmless', async () => {
    const { view, samples } = await play('twice', faultsOf('duplicate@100s+100s'))
    expect(view?.duplicates).toBeGreaterThan(0)
    expect(samples.filter(({ channel }) => channel === 'yard/twice/wall')).toHaveLength(61)
  })

  it('whose identity starts again from old numbers is found out', async () => {
    const { view, commands } = await play('twin', faultsOf('conflict@100s+100s'))
    expect(view?.conflicts).toBeGreaterThan(2)
    expect(commands).toContain('conflicts')
  })

  it('whose clock is wrong is not believed', async () => {
    const { view, samples } = await play('hasty', faultsOf('clock-wrong@100s+600s'), 'ntp')
    expect(view?.clock).toBe('suspect')
    const late = Math.max(...samples.map(({ t }) => t)) - Date.now()
    expect(late).toBeLessThan(60_000)
  })

  it('reports a broken probe by word and never repeats its last number', async () => {
    const { samples } = await play('broken', faultsOf('probe-open@100s+100s:wall,spike@300s:firebox'))
    const walls = samples.filter(({ channel }) => channel === 'yard/broken/wall')
    expect(walls.filter(({ quality, value }) => quality === 'fault:open' && value === null)).toHaveLength(10)
    const mouth = samples.filter(({ channel }) => channel === 'yard/broken/firebox').map(({ value }) => value ?? NaN)
    expect(Math.max(...mouth)).toBeGreaterThan(240)
  })

  it('sends rubbish: refused, and the rest of the hour is kept', async () => {
    const { refused, samples } = await play('mad', faultsOf('bad-json@100s+50s'))
    expect(refused.length).toBe(5)
    expect(samples.filter(({ channel }) => channel === 'yard/mad/wall')).toHaveLength(56)
  })

  it('obeys the service: a new boot number when asked, and an answer to every command', async () => {
    const asked = setTimeout(() => {
      for (const [id, word] of [
        ['c1', 'dance'],
        ['c2', 'rebirth'],
      ] as const) {
        const payload = Buffer.from(JSON.stringify({ id, do: word }))
        broker.publish({ cmd: 'publish', topic: 'firing/1/yard/asked/cmd', payload, qos: 1, retain: false, dup: false }, () => {})
      }
    }, 500)
    const { mine, refused } = await play('asked', [])
    clearTimeout(asked)
    const said = (kind: string) => mine.filter((m) => kindOf(m) === kind).map(({ text }) => JSON.parse(text) as Record<string, unknown>)
    expect(said('info').map(({ boot }) => boot)).toEqual([7, 8])
    expect(said('ack')).toEqual([
      { id: 'c1', ok: false },
      { id: 'c2', ok: true },
    ])
    expect(refused).toEqual([])
  })
})
