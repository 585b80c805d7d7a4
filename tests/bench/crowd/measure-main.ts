import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { connect, type Socket } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { openDatabase } from '../../../server/storage/sqlite/engine.ts'
import { startProgram, type Program } from '../../support/program.ts'
import { addressOf, percentile, SteadyNode } from './steady-node.ts'
import { Tablets } from './tablets.ts'

const [parts = 'crowd,backfill,floods,strangers', secondsWord = '20'] = process.argv.slice(2)
const seconds = Number(secondsWord)
const liveEveryMs = 1000

let missed = 0
function figure(what: string, value: number, unit: string, target: string, met: boolean): void {
  if (!met) missed++
  console.log(`${what.padEnd(76)} ${value.toFixed(1).padStart(9)} ${unit.padEnd(8)} target ${target}: ${met ? 'met' : 'MISSED'}`)
}
const atMost = (what: string, value: number, unit: string, most: number): void =>
  figure(what, value, unit, `at most ${most}`, value <= most)

async function yard(count: number): Promise<{ program: Program; nodes: SteadyNode[]; end: () => Promise<number> }> {
  const data = mkdtempSync(join(tmpdir(), 'crowd-'))
  const program = await startProgram(data, ['--log-level', 'error'])
  const nodes = Array.from({ length: count }, (_, n) => new SteadyNode(program.mqttPort, `n${n + 1}`, addressOf(n), n === 0))
  await Promise.race([Promise.all(nodes.map((node) => node.connected())), pause(20_000)])
  return {
    program,
    nodes,
    /** @returns packs acknowledged that are not in the journal */
    end: async () => {
      for (const node of nodes) node.pause()
      for (const node of nodes) await node.allAcknowledged(10_000)
      const acknowledged = nodes.reduce((sum, node) => sum + node.acknowledged, 0)
      for (const node of nodes) await node.end()
      program.child.kill('SIGTERM')
      await program.ended
      const database = openDatabase(join(data, 'kiln.db'), 'read')
      const sql = "SELECT count(DISTINCT topic || payload) AS n FROM journal WHERE topic LIKE 'firing/1/yard/n%'"
      const stored = Number(database.prepare(sql).get()?.['n'])
      database.close()
      rmSync(data, { recursive: true })
      return Math.max(0, acknowledged - stored)
    },
  }
}

/** Live readings of all nodes, watched by the tablets. */
function live(nodes: readonly SteadyNode[], tablets: Tablets): void {
  nodes.forEach((node, n) => {
    setTimeout(
      () => node.start(liveEveryMs, n === 0 ? (value, at) => tablets.sent(value, at) : undefined),
      (n * liveEveryMs) / nodes.length,
    )
  })
}

async function crowd(): Promise<void> {
  const { program, nodes, end } = await yard(200)
  const tablets = new Tablets()
  await tablets.open(program.url, 50)
  live(nodes, tablets)
  await pause(seconds * 1000)
  const heard = tablets.tookMs.length
  figure(
    'nodes connected at once',
    nodes.filter((node) => node.acknowledged > 0 && node.closed === 0).length,
    '',
    '200',
    nodes.every((node) => node.closed === 0 && node.acknowledged > 0),
  )
  figure('tablets connected at once', tablets.stillOpen, '', '50', tablets.stillOpen === 50)
  figure(
    'readings seen by the tablets, of those sent to all',
    (100 * heard) / (nodes[0]!.sent * 50),
    '%',
    'at least 95',
    heard >= 0.95 * nodes[0]!.sent * 50,
  )
  atMost('a reading on its way to each of 50 tablets, 99th percentile, 1,200 readings/s', percentile(tablets.tookMs, 0.99), 'ms', 250)
  atMost(
    'acknowledgement meanwhile, 99th percentile',
    percentile(
      nodes.flatMap((node) => node.waitsMs),
      0.99,
    ),
    'ms',
    50,
  )
  tablets.end()
  atMost('acknowledged and not stored', await end(), '', 0)
}

async function backfill(): Promise<void> {
  const { program, nodes, end } = await yard(10)
  const tablets = new Tablets()
  await tablets.open(program.url, 1)
  live(nodes, tablets)
  await pause(seconds * 1000)
  const before = percentile(tablets.tookMs.splice(0), 0.99)
  const began = performance.now()
  await Promise.all(nodes.map((node) => node.bringHour(3600)))
  const tookS = (performance.now() - began) / 1000
  await pause(1000)
  const during = percentile(tablets.tookMs.splice(0), 0.99)
  figure(
    'an hour of ten nodes and six channels, 216,000 readings, brought after',
    tookS,
    's',
    'all',
    nodes.every((node) => node.acknowledged >= 360),
  )
  console.log(`a live reading to the tablet, 99th percentile: before ${before.toFixed(0)} ms`)
  atMost('a live reading to the tablet meanwhile, 99th percentile', during, 'ms', 250)
  tablets.end()
  atMost('acknowledged and not stored', await end(), '', 0)
}

function run(flood: string, mqttPort: number, forSeconds: number): Promise<string> {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'flood.js'), flood, String(mqttPort), String(forSeconds)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let out = ''
  child.stdout.on('data', (chunk: Buffer) => (out += chunk.toString()))
  return new Promise((resolve) => child.once('exit', () => resolve(out.trim())))
}

async function floods(): Promise<void> {
  const { program, nodes, end } = await yard(2)
  for (const node of nodes) node.start(100)
  await pause(2000)
  for (const flood of JSON.parse(await run('names', 0, 0)) as string[]) {
    for (const node of nodes) node.waitsMs.length = 0
    const closedBefore = nodes.reduce((sum, node) => sum + node.closed, 0)
    const struck = await run(flood, program.mqttPort, Math.max(3, seconds / 4))
    const p99 = percentile(
      nodes.flatMap((node) => node.waitsMs),
      0.99,
    )
    const closed = nodes.reduce((sum, node) => sum + node.closed, 0) - closedBefore
    figure(`two good nodes beside: ${flood} (${struck})`, p99, 'ms', 'at most 500, none sent away', p99 <= 500 && closed === 0)
  }
  atMost('acknowledged and not stored', await end(), '', 0)
}

/** Resident memory, KiB (proc(5)). */
const rssKib = (pid: number | undefined): number => Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${String(pid)}/status`, 'utf8'))?.[1])

/** Two hundred who announce a packet, send what is taken of it and wait; each from an address of its own. Repeated, for memory breathes. */
async function strangers(): Promise<void> {
  const { program, end } = await yard(0)
  const gained: number[] = []
  for (let round = 0; round < 6; round++) {
    const before = rssKib(program.child.pid)
    const sockets = await Promise.all(
      Array.from(
        { length: 200 },
        (_, n) =>
          new Promise<Socket>((resolve) => {
            const socket = connect({ host: '127.0.0.1', port: program.mqttPort, localAddress: addressOf(n) }, () => {
              socket.write(Buffer.concat([Buffer.from([0x10, 0xf8, 0x07, 0, 4]), Buffer.from('MQTT'), Buffer.alloc(900, 65)]))
              resolve(socket)
            })
            socket.on('error', () => undefined)
          }),
      ),
    )
    await pause(1500)
    gained.push((rssKib(program.child.pid) - before) / 200)
    for (const socket of sockets) socket.destroy()
    await pause(6000)
  }
  console.log(`memory for each of 200 strangers, round by round: ${gained.map((kib) => kib.toFixed(1)).join(', ')} KiB`)
  atMost('memory for each of 200 who have not logged in, median of six', percentile(gained, 0.5), 'KiB', 8)
  await end()
}

const all: Record<string, () => Promise<void>> = { crowd, backfill, floods, strangers }
for (const part of parts.split(',')) {
  console.log(`\n${part}`)
  await all[part]?.()
}
process.exitCode = missed > 0 ? 1 : 0
