import { BodyReader } from './reader.ts'
import { readText } from './text.ts'

/** Return codes of CONNACK (MQTT 3.1.1, 3.2.2.3). */
export const connackCodes = { version: 1, identifier: 2, unavailable: 3 } as const

export type ConnectVerdict = { fine: { clientId: string; clean: boolean } } | { answer: number; fault: string } | { fault: string }

const idLength31 = 23
/** Length and text of the protocol's name, and its level. */
const lengthBeforeFlags31 = 2 + 6 + 1

/** A CONNECT of MQTT 3.1 or 3.1.1, checked whole: the broker behind takes text and flags as they come. */
export function checkConnect(packet: Buffer, from: number): ConnectVerdict {
  const body = new BodyReader(packet, from, packet.length)
  const name = body.field().toString('latin1')
  const level = body.byte()
  const expected = { MQTT: 4, MQIsdp: 3 }[name]
  if (expected === undefined) return { fault: 'not-mqtt' }
  if (body.short || level !== expected)
    return body.short ? { fault: 'short-packet' } : { answer: connackCodes.version, fault: 'mqtt-version' }

  const flags = body.byte()
  const will = (flags & 0x04) !== 0
  const willQos = (flags >> 3) & 3
  const user = (flags & 0x80) !== 0
  const password = (flags & 0x40) !== 0
  const clean = (flags & 0x02) !== 0
  const reserved = level > 3 && (flags & 0x01) !== 0
  // of no meaning in 3.1, but the parser behind judges it by the later version
  if (level === 3) packet[from + lengthBeforeFlags31] = flags & 0xfe
  if (reserved || willQos === 3 || (!will && (flags & 0x38) !== 0) || (!user && password)) return { fault: 'connect-flags' }
  body.word()

  const clientId = readText(body.field())
  const willTopic = will ? readText(body.field()) : 'none'
  if (will) body.field()
  const userName = user ? readText(body.field()) : ''
  if (password) body.field()
  if (body.short || body.left > 0) return { fault: body.short ? 'short-packet' : 'long-packet' }
  if (clientId === null || userName === null) return { fault: 'forbidden-text' }
  if (willTopic === null || willTopic === '' || /[+#]/.test(willTopic)) return { fault: 'bad-will' }
  if (clientId === '' && (level === 3 || !clean)) return { answer: connackCodes.identifier, fault: 'client-id' }
  if (level === 3 && clientId.length > idLength31) return { answer: connackCodes.identifier, fault: 'client-id' }
  return { fine: { clientId, clean } }
}
