import mqtt from 'mqtt'
import { startProgram, type Program } from '../../support/program.ts'

const topic = 'firing/1/yard/after/readings'

/** From the start of the process to the acknowledgement of the first reading that a node sends, ms. */
async function toFirstAck(folder: string): Promise<{ program: Program; tookMs: number }> {
  const began = performance.now()
  const program = await startProgram(folder, ['--log-level', 'error'])
  const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${program.mqttPort}`, { clientId: 'after', reconnectPeriod: 0 })
  await client.publishAsync(topic, '{"x":20}', { qos: 1 })
  const tookMs = performance.now() - began
  for (let n = 0; n < 200; n++) client.publish(topic, `{"x":${20 + (n % 5)}}`, { qos: 1 })
  client.on('error', () => undefined)
  return { program, tookMs }
}

/** The built service on the data of the bench, killed while it writes, started again. @returns ms from each start to the first acknowledgement */
export async function afterKills(folder: string, times: number): Promise<number[]> {
  const tookMs: number[] = []
  let { program } = await toFirstAck(folder)
  for (let n = 0; n < times; n++) {
    program.child.kill('SIGKILL')
    await program.ended
    const again = await toFirstAck(folder)
    tookMs.push(again.tookMs)
    program = again.program
  }
  program.child.kill('SIGKILL')
  await program.ended
  return tookMs
}
