import { spawn, type ChildProcess } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import type { Browser } from 'playwright-core'
import { post } from '../../support/driven-app.ts'
import { openBrowser } from '../../support/browser.ts'
import { Nodes } from './nodes.ts'
import { bareNode, end, peakMb, startService } from './service.ts'
import { Latencies, toldByBareParts, toldByService, watchPage, watchSocket, type Told } from './watchers.ts'

const [bareProgram = '', seconds = '120', demoSeconds = '220'] = process.argv.slice(2)
const starts = 5
const warmUpMs = 5000

interface Measured {
  socket: Latencies
  page: Latencies
  readingsPerS: number
  /** Peak of the service after the load, and after some more load with the demo playing; null where there is none. */
  mb: number
  demoMb: number | null
}

interface Where {
  url: string
  live: string
  mqttPort: number
  pid: number | undefined
  told: Told
  startDemo: (() => Promise<unknown>) | null
}

/** Sixty readings a second with a page open. */
async function underLoad(browser: Browser, where: Where): Promise<Measured> {
  const [socket, page] = [new Latencies(), new Latencies()]
  let counting = false
  const nodes = await Nodes.connect(where.mqttPort, (sent) => {
    if (!counting) return
    socket.sent(sent)
    page.sent(sent)
  })
  const closeSocket = await watchSocket(where.live, where.told, socket)
  nodes.start()
  const watched = await watchPage(browser, where.url, page)
  await pause(warmUpMs)
  counting = true
  const [from, before] = [performance.now(), nodes.acknowledged]
  while (performance.now() - from < Number(seconds) * 1000) {
    await pause(1000)
    await watched.collect()
  }
  const readingsPerS = ((nodes.acknowledged - before) * 1000) / (performance.now() - from)
  counting = false
  await pause(1000)
  await watched.collect()
  for (const latencies of [socket, page]) latencies.end()
  const mb = peakMb(where.pid)
  let demoMb: number | null = null
  if (where.startDemo) {
    await where.startDemo()
    await pause(Number(demoSeconds) * 1000)
    demoMb = peakMb(where.pid)
  }
  await watched.close()
  closeSocket()
  await nodes.stop()
  return { socket, page, readingsPerS, mb, demoMb }
}

async function startBare(): Promise<{ child: ChildProcess; where: Where }> {
  const child = spawn(process.execPath, [bareProgram], { stdio: ['ignore', 'pipe', 'inherit'] })
  const [port = '', mqttPort = ''] = await new Promise<string[]>((resolve) =>
    child.stdout.on('data', (chunk: Buffer) => resolve(chunk.toString().trim().split(' ').slice(1))),
  )
  const url = `http://127.0.0.1:${port}`
  const live = url.replace('http', 'ws')
  return { child, where: { url, live, mqttPort: Number(mqttPort), pid: child.pid, told: toldByBareParts, startDemo: null } }
}

const folder = mkdtempSync(join(tmpdir(), 'bench-line-'))
const worst = (values: readonly number[]): number => Math.max(...values)
const ready: number[] = []
const answered: number[] = []
const nodeAlone: { startMs: number; mb: number }[] = []
for (let n = 0; n < starts; n++) {
  nodeAlone.push(bareNode())
  const service = await startService(join(folder, `start-${n}`))
  ready.push(service.readyMs)
  answered.push(service.answeredMs)
  await end(service.child, 'SIGTERM')
}

const browser = await openBrowser()
const bareParts = await startBare()
const bare = await underLoad(browser, bareParts.where)
await end(bareParts.child, 'SIGTERM')
const data = join(folder, 'load')
const service = await startService(data)
const { url, mqttPort, child } = service
await post(`${url}/api/acts`, { id: 'lit', kiln: 'kiln-1', act: { action: 'light' } })
const startDemo = () => post(`${url}/api/demo`, { speed: 600 })
const ours = await underLoad(browser, {
  url,
  live: `${url.replace('http', 'ws')}/live`,
  mqttPort,
  pid: child.pid,
  told: toldByService,
  startDemo,
})
await browser.close()
await end(child, 'SIGKILL')
const back = await startService(data)
await end(back.child, 'SIGTERM')
rmSync(folder, { recursive: true })

const round = (value: number, unit: string): string =>
  Number.isFinite(value) ? `${value.toFixed(unit === 'ms' && value < 100 ? 1 : 0)} ${unit}` : '–'
const lines: [what: string, ours: number, bare: number, unit: 'ms' | 'MB', limit: number | null][] = [
  ['node to socket, p50', ours.socket.percentile(0.5), bare.socket.percentile(0.5), 'ms', null],
  ['node to socket, p99', ours.socket.percentile(0.99), bare.socket.percentile(0.99), 'ms', 250],
  ['node to painted number, p50', ours.page.percentile(0.5), bare.page.percentile(0.5), 'ms', null],
  ['node to painted number, p99', ours.page.percentile(0.99), bare.page.percentile(0.99), 'ms', 250],
  [`start to its addresses, worst of ${starts}`, worst(ready), worst(nodeAlone.map(({ startMs }) => startMs)), 'ms', 1000],
  [`start to the first answer, worst of ${starts}`, worst(answered), worst(nodeAlone.map(({ startMs }) => startMs)), 'ms', 1000],
  ['killed in a firing, back with an answer', back.answeredMs, NaN, 'ms', 3000],
  ['peak memory under load', ours.mb, bare.mb, 'MB', 150],
  ['peak memory, the demo at 600 beside it', ours.demoMb ?? NaN, worst(nodeAlone.map(({ mb }) => mb)), 'MB', 150],
]
console.log(
  `${ours.readingsPerS.toFixed(1)} readings/s acknowledged for ${seconds} s, then ${demoSeconds} s with the demo; a page open all the time`,
)
console.log(
  `seen on the socket ${ours.socket.tookMs.length}, missed ${ours.socket.missed}; painted ${ours.page.tookMs.length}, missed ${ours.page.missed}`,
)
console.log('bare: broker, JSON, socket and a plain page; node -e 0 for the starts and the last line\n')
let missed = 0
console.log(`${'figure'.padEnd(40)}${'ours'.padStart(10)}${'bare'.padStart(10)}${'at most'.padStart(10)}`)
for (const [what, value, bareValue, unit, limit] of lines) {
  const met = limit === null ? '' : value <= limit ? '  met' : '  MISSED'
  if (met === '  MISSED') missed++
  console.log(
    what.padEnd(40) +
      [round(value, unit), round(bareValue, unit), limit === null ? '' : round(limit, unit)].map((text) => text.padStart(10)).join('') +
      met,
  )
}
if (ours.socket.missed + ours.page.missed > 0) missed++
if (ours.readingsPerS < 59) missed++
process.exit(missed === 0 ? 0 : 1)
