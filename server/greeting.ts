import qrcode from 'qrcode-terminal'
import { addressesFor } from './addresses.ts'
import type { Running } from './app.ts'

/** What the person at the terminal reads: where to open the page, and a code for the tablet. */
export function greeting({ port, mqttPort, fresh, invitation }: Running, host: string, tls = false): string {
  const scheme = tls ? 'https' : 'http'
  const others = addressesFor(host)
  const lines = [
    '',
    `Open on this machine:  ${scheme}://localhost:${port}/`,
    ...others.map((address) => `Open on a tablet:      ${scheme}://${address}:${port}/`),
  ]
  lines.push(mqttPort === null ? 'Sensor nodes:          the outside broker' : `Sensor nodes:          MQTT port ${mqttPort}`)
  const first = others[0]
  if (first !== undefined) {
    const link = `${scheme}://${first}:${port}/pair?code=${invitation}`
    const what = fresh
      ? 'Pair the first tablet as the owner’s (good once, for 15 minutes):'
      : 'Pair another tablet (good once, for 15 minutes):'
    lines.push('', `${what}`, link)
    qrcode.generate(link, { small: true }, (picture) => lines.push(picture))
  }
  return `${lines.join('\n')}\n`
}
