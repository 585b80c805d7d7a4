import { packetTypes } from './wire.ts'
import type { Owed } from './owed.ts'
import { BodyReader } from './reader.ts'
import { filterIsValid, readText } from './text.ts'

const plus = 0x2b
const hash = 0x23
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
  const topicAt = from + 2
  const idAt = topicAt + (((packet[from] ?? 0) << 8) | (packet[from + 1] ?? 0))
  if (idAt + (qos > 0 ? 2 : 0) > to) return 'short-packet'
  const fault = checkTopic(packet, topicAt, idAt)
  if (fault !== null) return fault
  return qos > 0 && packet[idAt] === 0 && packet[idAt + 1] === 0 ? 'packet-id' : null
}

/** On the bytes themselves: every reading passes here. */
function checkTopic(packet: Buffer, from: number, to: number): string | null {
  if (from === to) return 'bad-topic'
  let plain = true
  for (let at = from; at < to; at++) {
    const byte = packet[at] ?? 0
    if (byte < 0x20 || byte === 0x7f) return 'forbidden-text'
    if (byte === plus || byte === hash) return 'bad-topic'
    if (byte > 0x7f) plain = false
  }
  return plain || readText(packet.subarray(from, to)) !== null ? null : 'forbidden-text'
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
