import { spawn } from 'node:child_process'
import type { ChildProcess } from 'node:child_process'
import { join } from 'node:path'
import { builtFolder } from './driven-app.ts'

export interface Program {
  child: ChildProcess
  url: string
  mqttPort: number
  out(): string
  /** Resolves with the exit status, or the signal that ended it. */
  ended: Promise<number | NodeJS.Signals | null>
}

/** Starts the built service on free ports and waits until it says where it is. Rejects with what it said when it ends first. */
export function startProgram(data: string, flags: readonly string[] = [], env: Readonly<Record<string, string>> = {}): Promise<Program> {
  const args = [join(builtFolder, 'server', 'main.js'), '--data', data, '--host', '127.0.0.1', '--port', '0', '--mqtt-port', '0', ...flags]
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, ...env } })
  let out = ''
  const ended = new Promise<number | NodeJS.Signals | null>((resolve) => child.on('exit', (status, signal) => resolve(status ?? signal)))
  return new Promise((resolve, reject) => {
    const heard = (chunk: Buffer) => {
      out += chunk.toString()
      const http = /http:\/\/localhost:(\d+)\//.exec(out)?.[1]
      const mqtt = /MQTT port (\d+)/.exec(out)?.[1]
      if (http && mqtt) resolve({ child, url: `http://127.0.0.1:${http}`, mqttPort: Number(mqtt), out: () => out, ended })
    }
    child.stdout.on('data', heard)
    child.stderr.on('data', heard)
    void ended.then((how) => reject(new Error(`${String(how)}: ${out}`)))
  })
}
