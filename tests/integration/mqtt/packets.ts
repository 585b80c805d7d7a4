// Packets of MQTT 3.1.1, written and read by hand, so that no library stands between a test and the bytes.

export const field = (bytes: string | Uint8Array): Buffer => {
  const content = Buffer.from(bytes as Uint8Array)
  return Buffer.concat([word(content.length), content])
}
const word = (value: number): Buffer => Buffer.from([value >> 8, value & 255])

/** @param head the first byte: type and flags */
export function packet(head: number, ...parts: Uint8Array[]): Buffer {
  const body = Buffer.concat(parts)
  const length: number[] = []
  let left = body.length
  do {
    length.push((left & 127) | (left > 127 ? 128 : 0))
    left >>= 7
  } while (left > 0)
  return Buffer.concat([Buffer.from([head, ...length]), body])
}

export interface Hello {
  clean?: boolean
  will?: { topic: string | Uint8Array; payload: string; qos?: number; retain?: boolean }
  user?: string | Uint8Array
  password?: string
  keepaliveS?: number
}

export function connect(clientId: string | Uint8Array, { clean = true, will, user, password, keepaliveS = 60 }: Hello = {}): Buffer {
  const flags =
    (clean ? 0x02 : 0) |
    (will ? 0x04 | ((will.qos ?? 0) << 3) | (will.retain ? 0x20 : 0) : 0) |
    (user === undefined ? 0 : 0x80) |
    (password === undefined ? 0 : 0x40)
  return packet(
    0x10,
    field('MQTT'),
    Buffer.from([4, flags]),
    word(keepaliveS),
    field(clientId),
    ...(will ? [field(will.topic), field(will.payload)] : []),
    ...(user === undefined ? [] : [field(user)]),
    ...(password === undefined ? [] : [field(password)]),
  )
}

export interface Message {
  qos?: number
  id?: number
  dup?: boolean
  retain?: boolean
}

export const publish = (
  topic: string | Uint8Array,
  payload: string,
  { qos = 0, id = 1, dup = false, retain = false }: Message = {},
): Buffer =>
  packet(0x30 | (dup ? 8 : 0) | (qos << 1) | (retain ? 1 : 0), field(topic), ...(qos > 0 ? [word(id)] : []), Buffer.from(payload))

export const subscribe = (id: number, ...filters: [filter: string | Uint8Array, qos: number][]): Buffer =>
  packet(0x82, word(id), ...filters.flatMap(([filter, qos]) => [field(filter), Buffer.from([qos])]))

export const unsubscribe = (id: number, ...filters: (string | Uint8Array)[]): Buffer => packet(0xa2, word(id), ...filters.map(field))

const heads = { puback: 0x40, pubrec: 0x50, pubrel: 0x62, pubcomp: 0x70 } as const
export const answer = (type: keyof typeof heads, id: number): Buffer => packet(heads[type], word(id))
export const pingreq = packet(0xc0)
export const disconnect = packet(0xe0)

const names: Record<number, string> = {
  2: 'connack',
  3: 'publish',
  4: 'puback',
  5: 'pubrec',
  6: 'pubrel',
  7: 'pubcomp',
  9: 'suback',
  11: 'unsuback',
  13: 'pingresp',
}

/** One line for one packet of a server, e.g. `publish 1 dup #3 a/b = x`, `suback #1 00 80`, `connack 01 00`. */
export function told(bytes: Buffer | null): string {
  if (bytes === null) return 'nothing'
  const head = bytes[0] ?? 0
  const name = names[head >> 4] ?? `type ${head >> 4}`
  let at = 1
  while ((bytes[at] ?? 0) > 127) at++
  const body = bytes.subarray(at + 1)
  if (name === 'publish') {
    const qos = (head >> 1) & 3
    const end = 2 + body.readUInt16BE(0)
    const id = qos > 0 ? ` #${body.readUInt16BE(end)}` : ''
    const marks = `${head & 8 ? ' dup' : ''}${head & 1 ? ' retained' : ''}`
    return `publish ${qos}${marks}${id} ${body.subarray(2, end).toString()} = ${body.subarray(end + (qos > 0 ? 2 : 0)).toString()}`
  }
  const hex = (from: number) => [...body.subarray(from)].map((byte) => ` ${byte.toString(16).padStart(2, '0')}`).join('')
  return name === 'connack' || body.length < 2 ? `${name}${hex(0)}` : `${name} #${body.readUInt16BE(0)}${hex(2)}`
}
