import { deflateSync, inflateSync } from 'node:zlib'

/** Rows of red, green, blue; eight bits each. */
export interface Picture {
  width: number
  height: number
  rgb: Uint8Array
}

/** PNG (W3C, third edition) as browsers write it: eight bits a channel, not interlaced, with or without alpha; palettes as `writePng` writes them. */
export function readPng(file: Uint8Array): Picture {
  const view = Buffer.from(file.buffer, file.byteOffset, file.byteLength)
  const packed: Buffer[] = []
  let width = 0
  let height = 0
  let kind = 2
  let palette: Buffer | null = null
  for (let at = 8; at < view.length;) {
    const length = view.readUInt32BE(at)
    const name = view.toString('latin1', at + 4, at + 8)
    const body = view.subarray(at + 8, at + 8 + length)
    if (name === 'IHDR') {
      width = body.readUInt32BE(0)
      height = body.readUInt32BE(4)
      kind = body[9] ?? 2
      if (body[8] !== 8 || body[12] !== 0 || ![2, 3, 6].includes(kind)) throw new Error('a PNG of a kind that is not read here')
    }
    if (name === 'PLTE') palette = body
    if (name === 'IDAT') packed.push(body)
    at += length + 12
  }
  const bytes = kind === 6 ? 4 : kind === 2 ? 3 : 1
  const raw = unfiltered(inflateSync(Buffer.concat(packed)), width * bytes, height, bytes)
  const rgb = new Uint8Array(width * height * 3)
  for (let i = 0; i < width * height; i += 1)
    for (let c = 0; c < 3; c += 1) rgb[i * 3 + c] = (palette ? palette[(raw[i] ?? 0) * 3 + c] : raw[i * bytes + c]) ?? 0
  return { width, height, rgb }
}

/** PNG filters 0 to 4: each byte was written as its difference to the left, the upper, their mean, or Paeth's choice. */
function unfiltered(data: Uint8Array, stride: number, height: number, bytes: number): Uint8Array {
  const out = new Uint8Array(stride * height)
  for (let y = 0; y < height; y += 1) {
    const filter = data[y * (stride + 1)]
    for (let x = 0; x < stride; x += 1) {
      const at = y * stride + x
      const left = x >= bytes ? (out[at - bytes] ?? 0) : 0
      const up = y > 0 ? (out[at - stride] ?? 0) : 0
      const corner = x >= bytes && y > 0 ? (out[at - stride - bytes] ?? 0) : 0
      const guess = filter === 1 ? left : filter === 2 ? up : filter === 3 ? (left + up) >> 1 : filter === 4 ? paeth(left, up, corner) : 0
      out[at] = (data[y * (stride + 1) + 1 + x] ?? 0) + guess
    }
  }
  return out
}

function paeth(left: number, up: number, corner: number): number {
  const guess = left + up - corner
  const [a, b, c] = [Math.abs(guess - left), Math.abs(guess - up), Math.abs(guess - corner)]
  return a <= b && a <= c ? left : b <= c ? up : corner
}

/** The same picture with at most 256 colours, small enough to be kept in the repository: the most used colours, and the nearest of them for the others. */
export function writePng({ width, height, rgb }: Picture): Buffer {
  const counts = new Map<number, number>()
  const colour = (i: number): number => ((rgb[i] ?? 0) << 16) | ((rgb[i + 1] ?? 0) << 8) | (rgb[i + 2] ?? 0)
  for (let i = 0; i < rgb.length; i += 3) counts.set(colour(i), (counts.get(colour(i)) ?? 0) + 1)
  const colours = [...counts].sort((a, b) => b[1] - a[1]).map(([one]) => one)
  const kept = colours.slice(0, 256)
  const index = new Map(kept.map((one, place) => [one, place]))
  for (const one of colours.slice(256)) index.set(one, nearest(one, kept))
  const rows = Buffer.alloc((width + 1) * height)
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) rows[y * (width + 1) + 1 + x] = index.get(colour((y * width + x) * 3)) ?? 0
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.set([8, 3, 0, 0, 0], 8)
  const palette = Buffer.from(kept.flatMap((one) => [one >> 16, (one >> 8) & 0xff, one & 0xff]))
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', header),
    chunk('PLTE', palette),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function nearest(colour: number, kept: readonly number[]): number {
  let best = 0
  let least = Infinity
  kept.forEach((other, place) => {
    let far = 0
    for (const shift of [16, 8, 0]) far += Math.abs(((colour >> shift) & 0xff) - ((other >> shift) & 0xff))
    if (far < least) {
      least = far
      best = place
    }
  })
  return best
}

function chunk(name: string, body: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), body])
  const out = Buffer.alloc(body.length + 12)
  out.writeUInt32BE(body.length, 0)
  out.set(named, 4)
  out.writeUInt32BE(crc(named), body.length + 8)
  return out
}

/** CRC-32 of ISO 3309, as PNG asks for it (node:zlib has one only from Node 22 on). */
function crc(bytes: Uint8Array): number {
  let value = 0xffffffff
  for (const byte of bytes) {
    value ^= byte
    for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1
  }
  return (value ^ 0xffffffff) >>> 0
}
