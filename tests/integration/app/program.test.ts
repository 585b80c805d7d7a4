import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:net'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import mqtt from 'mqtt'
import { afterEach, describe, expect, test } from 'vitest'
import type { Output } from '../../../server/contract/fold.ts'
import type { RecordingLine } from '../../../server/contract/recording.ts'
import { eventOf } from '../../../server/recordings/events.ts'
import { readRecording } from '../../../server/recordings/read.ts'
import { sqliteIn } from '../../contract/data-folder.ts'
import { builtFolder, getJson, post } from '../../support/driven-app.ts'
import { startProgram } from '../../support/program.ts'
import type { Program } from '../../support/program.ts'

const main = join(builtFolder, 'server', 'main.js')
const running: Program[] = []
const folder = () => mkdtempSync(join(tmpdir(), 'program-'))
async function start(data: string, flags: string[] = []): Promise<Program> {
  const program = await startProgram(data, flags)
  running.push(program)
  return program
}

afterEach(async () => {
  for (const program of running.splice(0)) {
    program.child.kill('SIGKILL')
    await program.ended
  }
})

/** Sends packs until told to stop; what was acknowledged is in `acked`. */
async function sendTo(port: number, from: { seq: number }, acked: Set<number>, count: number): Promise<void> {
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${port}`, { clientId: 'n1', reconnectPeriod: 0 })
  client.on('error', () => {})
  let gone = false
  const closed = new Promise<void>((resolve) => client.once('close', resolve)).then(() => void (gone = true))
  for (let i = 0; i < count; i++) {
    const seq = ++from.seq
    const pack = [
      { bn: 'yard/n1/', bu: 'Cel', n: 'wall', v: 20 + seq / 4, t: 0, ut: 1 },
      { n: 'firebox', v: 200 + seq, t: 0 },
      { n: 'outlet', v: 25, t: 0 },
      { n: 'boot', u: 'count', v: 5 },
      { n: 'seq', u: 'count', v: seq },
      { n: 'up', u: 's', v: performance.now() / 1000 },
    ]
    const answered = client.publishAsync('firing/1/yard/n1/readings', JSON.stringify(pack), { qos: 1 }).then(
      () => acked.add(seq),
      () => {},
    )
    await Promise.race([answered, closed])
    if (gone) return
    await new Promise((resolve) => setTimeout(resolve, 50))
  }
  await client.endAsync(true)
}

const seqsIn = (lines: readonly RecordingLine[]): number[] =>
  lines.flatMap((line) => ('payload' in line ? ((line.payload as { n: string; v: number }[]).find((r) => r.n === 'seq')?.v ?? []) : []))

describe('the program', () => {
  test('killed in the middle of a firing: nothing acknowledged is lost, the firing goes on, and its export replays to the same lines', async () => {
    const data = folder()
    const acked = new Set<number>()
    const node = { seq: 0 }
    const first = await start(data)
    await post(`${first.url}/api/acts`, { id: 'a-light', kiln: 'kiln-1', act: { action: 'light' } })
    const sending = sendTo(first.mqttPort, node, acked, 1000)
    await new Promise((resolve) => setTimeout(resolve, 4000))
    first.child.kill('SIGKILL')
    expect(await first.ended).toBe('SIGKILL')
    await sending

    const second = await start(data)
    const [firing] = await getJson<{ id: string }[]>(`${second.url}/api/firings`)
    await sendTo(second.mqttPort, node, acked, 60)
    // phases are judged every ten seconds: a quick machine must wait for the first
    const toldSoFar = async () => (await getJson<{ outputs: Output[] }>(`${second.url}/api/firings/${firing?.id}`)).outputs.length
    await expect.poll(toldSoFar, { interval: 500 }).toBeGreaterThan(0)
    await post(`${second.url}/api/acts`, { id: 'a-unload', kiln: 'kiln-1', act: { action: 'unload' } })
    const endedAt = async () => (await getJson<{ endedAt: number | null }[]>(`${second.url}/api/firings`))[0]?.endedAt
    await expect.poll(endedAt).toEqual(expect.any(Number))
    const { acts } = await getJson<{ acts: { id: string }[] }>(`${second.url}/api/firings/${firing?.id}`)
    const text = await (await fetch(`${second.url}/api/firings/${firing?.id}/recording`)).text()
    second.child.kill('SIGTERM')
    expect(await second.ended).toBe(0)
    // the page is told of some kinds only; what the live run told stands in the store whole
    const store = sqliteIn(data)
    await store.start()
    const outputs = await store.outputs(firing?.id ?? '')
    await store.stop()

    expect(acts.map((act) => act.id)).toEqual(['a-light', 'a-unload'])
    const { lines } = readRecording(new TextEncoder().encode(text))
    const kept = new Set(seqsIn(lines))
    expect([...acked].filter((seq) => !kept.has(seq))).toEqual([])
    expect(acked.size).toBeGreaterThan(60)
    const file = join(data, 'export.jsonl')
    writeFileSync(file, text)
    const replayed = execFileSync(process.execPath, [join(builtFolder, 'server', 'replay.js'), file, '--json'], { encoding: 'utf8' })
    const told = outputs.flatMap((output) => eventOf('kiln-1', output) ?? []).map((line) => JSON.stringify(line))
    expect(told.length).toBeGreaterThan(0)
    expect(replayed.trim().split('\n').slice(0, -1)).toEqual(told)
  })

  test('a second one on the same data folder ends with 3 and one sentence', async () => {
    const data = folder()
    await start(data)
    await expect(startProgram(data)).rejects.toThrow(/^3: .*already running/)
  })

  test('a port that is taken ends with 4 and names it', async () => {
    const taken = createServer().listen(0, '127.0.0.1')
    await new Promise((resolve) => taken.once('listening', resolve))
    const { port } = taken.address() as AddressInfo
    try {
      await expect(startProgram(folder(), ['--port', String(port)])).rejects.toThrow(new RegExp(`^4: .*${port}`))
      await expect(startProgram(folder(), ['--mqtt-port', String(port)])).rejects.toThrow(new RegExp(`^4: .*${port}`))
    } finally {
      taken.close()
    }
  })

  test.each([
    [['--prot', '1'], 2],
    [['--port', 'x'], 2],
    [['--data', '/proc/nowhere'], 5],
    [['--help'], 0],
    [['--version'], 0],
  ])('%j ends with %i', (flags, status) => {
    const run = spawnSync(process.execPath, [main, ...flags], { encoding: 'utf8', cwd: folder() })
    expect(run.status).toBe(status)
    expect((status === 0 ? run.stdout : run.stderr).trim()).not.toBe('')
    expect(run.stderr).not.toContain('    at ')
  })

  test.each([
    ['that is not there', '/nowhere/sound'],
    ['that is no program', main],
    ['that is a folder', '/'],
  ])('a host sound %s ends with 2 and one sentence', (_, program) => {
    const run = spawnSync(process.execPath, [main, '--data', folder(), '--host-sound', program], { encoding: 'utf8', cwd: folder() })
    expect(run.status).toBe(2)
    expect(run.stderr).toMatch(/^The program of --host-sound .*\n$/)
  })

  test('--print-config prints one JSON document', () => {
    const run = spawnSync(process.execPath, [main, '--print-config', '--site', 'hill'], { encoding: 'utf8', cwd: folder() })
    expect(JSON.parse(run.stdout)).toMatchObject({ version: 1, site: 'hill' })
  })
})

describe('replay', () => {
  test.each([
    ['no file', ['/nowhere/at-all.jsonl']],
    ['a folder', ['/']],
    ['a file that is no recording', [main]],
    ['nothing', []],
    ['a language that it does not speak', ['--language', 'xx', main]],
  ])('of %s ends with 2 and says so on standard error only', (_, args) => {
    const run = spawnSync(process.execPath, [join(builtFolder, 'server', 'replay.js'), '--json', ...args], { encoding: 'utf8' })
    expect(run.status).toBe(2)
    expect(run.stdout).toBe('')
    expect(run.stderr).not.toContain('    at ')
  })
})
