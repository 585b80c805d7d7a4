import { spawn, spawnSync, type ChildProcess } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { createServer, type AddressInfo } from 'node:net'

export interface Service {
  child: ChildProcess
  url: string
  mqttPort: number
  /** From the start of the process to the line that says where it is, and to the first answer of the API, ms. */
  readyMs: number
  answeredMs: number
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1')
  await new Promise((resolve) => server.once('listening', resolve))
  const { port } = server.address() as AddressInfo
  await new Promise((resolve) => server.close(resolve))
  return port
}

/** What `npm start` runs, word by word. */
function startWords(): string[] {
  const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as { scripts: { start: string } }
  return scripts.start.split(' ').slice(1)
}

export async function startService(data: string): Promise<Service> {
  const [port, mqttPort] = [await freePort(), await freePort()]
  const url = `http://127.0.0.1:${port}`
  const flags = ['--data', data, '--host', '127.0.0.1', '--port', port, '--mqtt-port', mqttPort, '--log-level', 'error'].map(String)
  const began = performance.now()
  const child = spawn(process.execPath, [...startWords(), ...flags], { stdio: ['ignore', 'pipe', 'inherit'] })
  const ready = new Promise<number>((resolve, reject) => {
    let out = ''
    child.stdout.on('data', (chunk: Buffer) => {
      out += chunk.toString()
      if (out.includes(`:${port}/`)) resolve(performance.now() - began)
    })
    child.once('exit', (status) => reject(new Error(`the service ended with ${String(status)}`)))
  })
  const answered = (async () => {
    for (;;) {
      const ok = await fetch(`${url}/api/health`).then(
        (response) => response.ok,
        () => false,
      )
      if (ok) return performance.now() - began
      await new Promise((resolve) => setTimeout(resolve, 5))
    }
  })()
  const readyMs = await ready
  return { child, url, mqttPort, readyMs, answeredMs: await answered }
}

export async function end(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  const ended = new Promise((resolve) => child.once('exit', resolve))
  child.kill(signal)
  await ended
}

/** Most memory that a process has held, MB (proc(5), VmHWM); NaN where the system does not tell. */
export function peakMb(pid: number | undefined): number {
  try {
    return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${String(pid)}/status`, 'utf8'))?.[1] ?? NaN) / 1000
  } catch {
    return NaN
  }
}

/** Node alone, from start to end, ms, and its peak memory, MB. */
export function bareNode(): { startMs: number; mb: number } {
  const began = performance.now()
  spawnSync(process.execPath, ['-e', '0'])
  const startMs = performance.now() - began
  const told = `const { readFileSync } = require('node:fs'); console.log(/VmHWM:\\s+(\\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))[1])`
  const mb = Number(spawnSync(process.execPath, ['-e', told], { encoding: 'utf8' }).stdout || NaN) / 1000
  return { startMs, mb }
}
