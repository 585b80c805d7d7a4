import { spawn, spawnSync, type ChildProcess } from 'node:child_process'
import { join } from 'node:path'
import { bundle } from '../../support/bundle.mjs'

/** Bundles one of the rig's programs beside the build; a program of its own can be killed and traced. @returns its file, to be removed with its folder */
export async function bundleRig(name: string): Promise<string> {
  return join(await bundle({ [name]: `tests/faults/rig/${name}-main.ts` }), `${name}.js`)
}

export function has(program: string): boolean {
  return spawnSync('which', [program]).status === 0
}

/** True where strace is installed and may look into programs: some containers forbid it. */
export function mayTrace(): boolean {
  return has('strace') && spawnSync('strace', ['-f', '-o', '/dev/null', '-e', 'trace=fsync', 'true']).status === 0
}

export interface Running {
  child: ChildProcess
  port: number
  readyAfterMs: number
  /** Resolves with the exit status or the signal. */
  ended: Promise<number | string>
}

/** Starts a program that says `ready PORT`. @param before a command that runs it, and its arguments */
export async function startReady(file: string, args: string[], before: string[] = []): Promise<Running> {
  const began = performance.now()
  const [command = '', ...rest] = [...before, process.execPath, file, ...args]
  const child = spawn(command, rest, { stdio: ['ignore', 'pipe', 'inherit'] })
  const ended = new Promise<number | string>((resolve) => child.once('exit', (status, signal) => resolve(status ?? signal ?? 'gone')))
  const port = await new Promise<number>((resolve, reject) => {
    let said = ''
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString()
      const ready = /ready (\d+)/.exec(said)
      if (ready !== null) resolve(Number(ready[1]))
    })
    void ended.then((end) => reject(new Error(`ended before it was ready: ${end}`)))
  })
  return { child, port, readyAfterMs: performance.now() - began, ended }
}

/**
 * From now on some system calls of a running program fail or are slow. @param inject as strace takes it, e.g. `fsync:error=EIO:when=3`
 * @param record file that tells afterwards what was injected
 */
export async function injectFaults(pid: number, inject: string, record: string): Promise<void> {
  const syscalls = inject.slice(0, inject.indexOf(':'))
  const tracer = spawn('strace', ['-f', '-o', record, '-e', `trace=${syscalls}`, '-e', `inject=${inject}`, '-p', String(pid)], {
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  await new Promise<void>((resolve, reject) => {
    tracer.stderr.on('data', (chunk: Buffer) => chunk.toString().includes('attached') && resolve())
    tracer.once('exit', (status) => reject(new Error(`strace ended with ${status}`)))
  })
}
