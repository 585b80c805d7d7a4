import { existsSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { connect } from 'node:net'
import { setTimeout as pause } from 'node:timers/promises'
import mqtt from 'mqtt'
import { afterEach, expect, it } from 'vitest'
import { sqliteIn } from '../contract/data-folder.ts'
import { readAll } from '../contract/store.contract.ts'
import type { LotsAnswer } from '../../server/http/lots/routes.ts'
import { foldLedger } from '../../server/domain/lots/ledger.ts'
import { restOf } from '../../server/domain/lots/rest.ts'
import { getJson, post } from '../support/driven-app.ts'
import { bottle, demijohn } from '../support/lot-story.ts'
import { startProgram } from '../support/program.ts'
import type { Program } from '../support/program.ts'
import { injectFaults, mayTrace } from './rig/programs.ts'

// Faults of the whole built program. Numbers are those of the handbook's table of faults (reliability, 8).

const running: Program[] = []
const folderOf = () => mkdtempSync(join(tmpdir(), 'whole-'))
async function started(...given: Parameters<typeof startProgram>): Promise<Program> {
  const program = await startProgram(...given)
  running.push(program)
  return program
}
afterEach(async () => {
  for (const program of running.splice(0)) {
    program.child.kill('SIGKILL')
    await program.ended
  }
})

/** A node that counts; `send` resolves when the message was acknowledged. */
async function nodeOf(program: Program) {
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${program.mqttPort}`, { clientId: 'n1', reconnectPeriod: 0 })
  let seq = 0
  const acknowledged: string[] = []
  const send = async () => {
    const text = `[{"bn":"yard/n1/","bu":"Cel","n":"wall","v":${20 + ++seq},"t":0},{"n":"boot","u":"count","v":1},{"n":"seq","u":"count","v":${seq}},{"n":"up","u":"s","v":${seq}}]`
    await client.publishAsync('firing/1/yard/n1/readings', text, { qos: 1 })
    acknowledged.push(text)
  }
  return { client, acknowledged, send }
}
async function storedIn(data: string) {
  const store = sqliteIn(data)
  await store.start()
  const entries = await readAll(store)
  await store.stop()
  const texts = new Set(entries.map(({ payload }) => Buffer.from(payload).toString()))
  return { entries, texts }
}
async function stopped(program: Program): Promise<void> {
  program.child.kill('SIGTERM')
  expect(await program.ended).toBe(0)
}

const library = ['/usr/lib/x86_64-linux-gnu', '/usr/lib/aarch64-linux-gnu', '/usr/lib/arm-linux-gnueabihf']
  .map((folder) => join(folder, 'faketime', 'libfaketime.so.1'))
  .find((file) => existsSync(file))

it.skipIf(library === undefined)(
  'clock steps +1 h, -3 h, to 1970, to 2038 and over a change of summer time: timers go on, nothing lost, the axis never goes back (F24; Debian package faketime)',
  async () => {
    const data = folderOf()
    const stamp = join(data, '..', `${data.split('/').at(-1) ?? ''}.time`)
    const set = (text: string) => writeFileSync(stamp, text)
    set('+0')
    const env = {
      LD_PRELOAD: library ?? '',
      FAKETIME_TIMESTAMP_FILE: stamp,
      FAKETIME_NO_CACHE: '1',
      FAKETIME_DONT_FAKE_MONOTONIC: '1',
      DONT_FAKE_MONOTONIC: '1',
      TZ: 'Europe/Berlin',
    }
    const program = await started(data, [], env)
    const { client, acknowledged, send } = await nodeOf(program)
    await send()
    for (const step of [
      '+3600',
      '-10800',
      '@1970-01-02 00:00:00',
      '@2038-01-19 03:14:05',
      '@2026-03-29 01:59:58',
      '@2026-10-25 02:59:58',
    ]) {
      set(step)
      await pause(1200) // a tick of the service's own second passes
      await send()
      const { now } = await getJson<{ now: number }>(`${program.url}/api/health`)
      expect(Number.isFinite(now)).toBe(true)
    }
    await client.endAsync(true)
    set('+0')
    await stopped(program)
    const { entries, texts } = await storedIn(data)
    expect(acknowledged).toHaveLength(7)
    expect(acknowledged.filter((text) => !texts.has(text))).toEqual([])
    expect(entries.every(({ at }, index) => at >= (entries[index - 1]?.at ?? 0))).toBe(true)
    // the next start does not go back either
    const again = await started(data)
    expect((await getJson<{ now: number }>(`${again.url}/api/health`)).now).toBeGreaterThanOrEqual(entries.at(-1)?.at ?? 0)
  },
)

it('terminal gone, standard output closed, SIGHUP and SIGPIPE: it goes on (F27)', async () => {
  const data = folderOf()
  const program = await started(data)
  program.child.stdout?.destroy()
  program.child.stderr?.destroy()
  for (const signal of ['SIGHUP', 'SIGPIPE'] as const) program.child.kill(signal)
  const { client, acknowledged, send } = await nodeOf(program)
  for (let i = 0; i < 5; i++) await send()
  // what is refused is logged into the closed pipe
  const bad = connect(program.mqttPort, '127.0.0.1', () => bad.write(Buffer.alloc(64)))
  await new Promise<void>((resolve) => bad.on('error', () => {}).once('close', () => resolve()))
  await send()
  await client.endAsync(true)
  await stopped(program)
  const { texts } = await storedIn(data)
  expect(acknowledged.filter((text) => !texts.has(text))).toEqual([])
  expect(acknowledged).toHaveLength(6)
})

it('a hundred tablets that never read: those beyond the cap are turned away, a node is served meanwhile (F29)', async () => {
  const program = await started(folderOf())
  const upgrade = `GET /live HTTP/1.1\r\nHost: localhost\r\nConnection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n\r\n`
  const port = Number(new URL(program.url).port)
  const opened = await Promise.all(
    Array.from(
      { length: 130 },
      () =>
        new Promise<{ status: string; end: () => void }>((resolve) => {
          const socket = connect(port, '127.0.0.1', () => socket.write(upgrade))
          socket.on('error', () => {})
          socket.once('data', (chunk: Buffer) => {
            socket.pause()
            resolve({ status: chunk.toString('latin1').slice(9, 12), end: () => socket.destroy() })
          })
        }),
    ),
  )
  expect(opened.filter(({ status }) => status === '101')).toHaveLength(100)
  expect(opened.filter(({ status }) => status === '503')).toHaveLength(30)
  const { client, send } = await nodeOf(program)
  for (let i = 0; i < 20; i++) await send()
  expect((await post(`${program.url}/api/acts`, { id: 'x', kiln: 'kiln-1', act: { action: 'note', text: 'x' } })).status).toBe(200)
  for (const { end } of opened) end()
  await client.endAsync(true)
})

it.skipIf(!mayTrace())(
  'no more files can be opened for a while: who is connected is served, and afterwards everybody (F8; Debian package strace)',
  async () => {
    const data = folderOf()
    const program = await started(data)
    const { client, acknowledged, send } = await nodeOf(program)
    await injectFaults(program.child.pid ?? 0, 'accept4:error=EMFILE:when=1..3', join(data, '..', 'emfile.trace'))
    const others = Array.from({ length: 5 }, () => connect(program.mqttPort, '127.0.0.1').on('error', () => {}))
    for (let i = 0; i < 5; i++) await send()
    await pause(300)
    for (const other of others) other.destroy()
    const second = await mqtt.connectAsync(`mqtt://127.0.0.1:${program.mqttPort}`, {
      clientId: 'n2',
      reconnectPeriod: 0,
      connectTimeout: 8000,
    })
    await second.endAsync(true)
    await client.endAsync(true)
    await stopped(program)
    expect(acknowledged).toHaveLength(5)
  },
)

it.skipIf(library === undefined)(
  'ninety days of rest, through restarts and a clock in doubt: drawn off on the day and not before (F25; Debian package faketime)',
  async () => {
    const data = folderOf()
    const onDay = async (stamp: string): Promise<Program> => {
      const env = {
        LD_PRELOAD: library ?? '',
        FAKETIME: `@${stamp}`,
        FAKETIME_DONT_FAKE_MONOTONIC: '1',
        DONT_FAKE_MONOTONIC: '1',
        TZ: 'UTC',
      }
      return started(data, [], env)
    }
    const enter = async ({ url }: Program, id: string, event: object) =>
      expect((await post(`${url}/api/lots/entries`, { id, event })).status, id).toBe(201)
    const draw = (program: Program, lot: string) =>
      enter(program, `draw-${lot}`, {
        ...{ what: 'draw', lot: '7', layer: 'vinegar', volumeMl: 400, lossMl: 0 },
        into: { lot, vessel: { ...demijohn, name: `vessel ${lot}` } },
      })
    const sayRight = async ({ url }: Program) => expect((await post(`${url}/api/setup/clock`, { right: true })).status).toBe(201)
    /** As the page judges it. */
    const book = async ({ url }: Program) => {
      const { entries, today } = await getJson<LotsAnswer>(`${url}/api/lots`)
      const ledger = foldLedger(entries)
      if (!ledger.ok) throw new Error(JSON.stringify(ledger.problems))
      const lot = ledger.value.lots.get('7')
      if (lot?.kind !== 'condensate') throw new Error('no lot')
      return { rest: restOf(lot, today), stages: [...ledger.value.lots.values()].map((one) => ('stage' in one ? one.stage : null)) }
    }

    const first = await onDay('2026-03-01 10:00:00')
    await sayRight(first)
    await enter(first, 'fill', { what: 'fill', lot: '7', firing: null, bottles: [bottle(1, 1000)], vessel: demijohn })
    await enter(first, 'layers', { what: 'layers', lot: '7', lightOilMl: 20, vinegarMl: 900, tarMl: 80 })
    expect((await book(first)).rest).toMatchObject({ state: 'resting', restedDays: 0, drawFrom: '2026-05-30' })
    await stopped(first)

    const dayBefore = await onDay('2026-05-29 10:00:00')
    await draw(dayBefore, '8')
    expect(await book(dayBefore)).toMatchObject({ rest: { state: 'resting', restedDays: 89 }, stages: ['crude', 'crude'] })
    await stopped(dayBefore)

    // a board without a battery: neither of the two dates is believed before somebody says so
    const lost = await onDay('1970-01-01 00:00:10')
    expect((await book(lost)).rest).toMatchObject({ state: 'refused', problem: { code: 'clock-unconfirmed' } })
    await stopped(lost)

    const day = await onDay('2026-05-30 10:00:00')
    await sayRight(day)
    await draw(day, '9')
    expect(await book(day)).toMatchObject({ rest: { state: 'rested', restedDays: 90 }, stages: ['crude', 'crude', 'drawn'] })
    await stopped(day)
  },
)

it.each(['throw new Error(text)', 'Promise.reject(new Error(text))'])(
  'a failure that nobody expected (%s): it is logged, the program ends with 70 and starts again; nothing acknowledged is lost (F28)',
  async (how) => {
    const data = folderOf()
    const hook = `const text = 'made by a test'; process.on('SIGUSR2', () => setTimeout(() => { ${how} }, 0))`
    const program = await started(data, [], { NODE_OPTIONS: `--import=data:text/javascript,${encodeURIComponent(hook)}` })
    const { acknowledged, send } = await nodeOf(program)
    for (let i = 0; i < 5; i++) await send()
    program.child.kill('SIGUSR2')
    expect(await program.ended).toBe(70)
    expect(program.out()).toContain('made by a test')
    await stopped(await started(data))
    const { texts } = await storedIn(data)
    expect(acknowledged.filter((text) => !texts.has(text))).toEqual([])
  },
)
