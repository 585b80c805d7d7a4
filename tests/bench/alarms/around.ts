import { spawn } from 'node:child_process'
import { join } from 'node:path'

export interface Around {
  stop: () => Promise<{ readingsPerS: number; partsPerS: number }>
}

/** Starts the program beside this one that makes the load; resolves once it runs. */
export async function startAround(
  ports: { mqtt: number; http: number },
  load: { readingsPerS: number; nodes: number; tablets: number },
): Promise<Around> {
  const numbers = [ports.mqtt, ports.http, load.readingsPerS, load.nodes, load.tablets].map(String)
  const child = spawn(process.execPath, [join(import.meta.dirname, 'around.js'), ...numbers], { stdio: ['pipe', 'pipe', 'inherit'] })
  let said = ''
  child.stdout.on('data', (chunk: Buffer) => (said += chunk.toString()))
  const until = (mark: string): Promise<void> =>
    new Promise((resolve, reject) => {
      const look = () => {
        if (said.includes(mark)) resolve()
      }
      child.stdout.on('data', look)
      child.once('exit', () => (said.includes(mark) ? resolve() : reject(new Error('the load ended by itself'))))
    })
  await until('ready')
  return {
    async stop() {
      const told = until('{')
      child.stdin.end()
      await told
      return JSON.parse(said.slice(said.indexOf('{'))) as { readingsPerS: number; partsPerS: number }
    },
  }
}
