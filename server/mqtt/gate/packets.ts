import { packetTypes } from './wire.ts'
import type { Owed } from './owed.ts'
import { BodyReader } from './reader.ts'
import { filterIsValid, readText } from './text.ts'

/** The low half of the first byte, where the type fixes it (MQTT 3.1.1, 2.2.2). */
const fixedFlags: Record<number, number> = { 1: 0, 4: 0, 5: 0, 6: 2, 7: 0, 8: 2, 10: 2, 12: 0, 14: 0 }

/** @returns why the connection must be closed, or null. @param head first byte; @param from where the body starts */
export function checkPacket(head: number, packet: Buffer, from: number, to: number, awaited: Owed): string | null {
  const type = head >> 4
  const flags = head & 15
  if (type === packetTypes.publish) return checkPublish(flags, packet, from, to)
  if (fixedFlags[type] === undefined) return 'packet-type'
  if (fixedFlags[type] !== flags) return 'packet-flags'
  const body = new BodyReader(packet, from, to)
  switch (type) {
    case packetTypes.connect:
      return 'second-connect'
    case packetTypes.pingreq:
    case packetTypes.disconnect:
      return body.left === 0 ? null : 'long-packet'
    case packetTypes.subscribe:
      return checkFilters(body, true)
    case packetTypes.unsubscribe:
      return checkFilters(body, false)
    default:
      return checkAnswer(type, body, awaited)
  }
}

function checkPublish(flags: number, packet: Buffer, from: number, to: number): string | null {
  const qos = (flags >> 1) & 3
  if (qos === 3) return 'publish-qos'
  if (qos === 0 && (flags & 8) !== 0) return 'publish-dup'
  const body = new BodyReader(packet, from, to)
  const topic = readText(body.field())
  if (topic === null) return 'forbidden-text'
  if (topic === '' || /[+#]/.test(topic)) return 'bad-topic'
  if (qos > 0 && body.word() === 0) return 'packet-id'
  return body.short ? 'short-packet' : null
}

function checkFilters(body: BodyReader, withQos: boolean): string | null {
  if (body.word() === 0) return 'packet-id'
  if (body.left === 0) return 'no-filter'
  while (body.left > 0) {
    const filter = readText(body.field())
    if (filter === null) return 'forbidden-text'
    if (filter === '' || !filterIsValid(filter)) return 'bad-filter'
    if (withQos && body.byte() > 2) return 'subscribe-qos'
  }
  return body.short ? 'short-packet' : null
}

function checkAnswer(type: number, body: BodyReader, awaited: Owed): string | null {
  const id = body.word()
  if (body.short || body.left > 0) return body.short ? 'short-packet' : 'long-packet'
  if (id === 0) return 'packet-id'
  return awaited.answer(type, id) ? null : 'wrong-answer'
}
