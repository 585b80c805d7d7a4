/** Numbers of 0 to 1 that are the same for the same seed (mulberry32, public domain). */
export class Dice {
  #state: number

  constructor(seed: number) {
    this.#state = seed >>> 0
  }

  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }

  /** A whole number below `bound`. */
  below(bound: number): number {
    return Math.floor(this.next() * bound)
  }

  of<T>(list: readonly T[]): T {
    const found = list[this.below(list.length)]
    if (found === undefined) throw new RangeError('nothing to choose from')
    return found
  }
}

/** What senders get wrong, and what decoders have broken on: numbers at their edges, keys of JavaScript, text that is none. */
const tokens = [
  '""',
  'null',
  'true',
  '-0',
  '1e999',
  '-1e308',
  '9007199254740993',
  '268435456',
  '1772344800.5',
  '0.1e-400',
  '[[[[',
  ']]]]',
  '{"":{"":',
  '"__proto__":{}',
  '"constructor"',
  '"bn":"yard/n1/"',
  '"bver":11',
  '"x_":1',
  '"t":-1e9',
  '"vs":"fault:open"',
  '"boot"',
  '"seq"',
  '"u":"K"',
  '\\ud800',
  '\\u0000',
  '\ufeff',
  '\n',
  '\r\n',
  ';;',
  '""""',
  '1970-01-01T00:00:00Z',
  '+99:99',
  '24:00',
  '٣',
  '1,5',
  '=1+1',
].map((text) => Buffer.from(text))
const rawTokens = [[0xff], [0xc0, 0x80], [0xed, 0xa0, 0x80], [0xf4, 0x90, 0x80, 0x80], [0], [0x1f, 0x8b], [0xff, 0xff, 0xff, 0x7f]].map(
  (bytes) => Buffer.from(bytes),
)

const longest = 70_000

/** One to four changes of one of the seeds; one in sixteen stays as it is, so that what comes after good input is met too. */
export function mutated(seeds: readonly Buffer[], dice: Dice): Buffer {
  let bytes = Buffer.from(dice.of(seeds))
  if (dice.below(16) === 0) return bytes
  for (let changes = 1 + dice.below(4); changes > 0; changes--) bytes = changed(bytes, seeds, dice)
  return bytes.subarray(0, longest)
}

function changed(bytes: Buffer, seeds: readonly Buffer[], dice: Dice): Buffer<ArrayBuffer> {
  const at = dice.below(bytes.length + 1)
  const some = Math.min(bytes.length - at, 1 + dice.below(dice.below(8) === 0 ? 4000 : 24))
  const [before, part, after] = [bytes.subarray(0, at), bytes.subarray(at, at + some), bytes.subarray(at + some)]
  switch (dice.below(9)) {
    case 0: {
      const copy = Buffer.from(bytes)
      if (at < copy.length) copy[at] = (copy[at] ?? 0) ^ (1 << dice.below(8))
      return copy
    }
    case 1: {
      const copy = Buffer.from(bytes)
      if (at < copy.length) copy[at] = dice.of([0, 1, 0x7f, 0x80, 0xff, dice.below(256)])
      return copy
    }
    case 2:
      return Buffer.concat([before, after])
    case 3:
      return Buffer.concat([before, part, part, after])
    case 4:
      return Buffer.concat([before, ...Array.from({ length: 1 + dice.below(200) }, () => part), after])
    case 5:
      return Buffer.from(before)
    case 6: {
      const other = dice.of(seeds)
      return Buffer.concat([before, other.subarray(dice.below(other.length + 1))])
    }
    case 7:
      return Buffer.concat([before, dice.of(rawTokens), after])
    default:
      return Buffer.concat([before, dice.of(tokens), dice.below(2) === 0 ? after : Buffer.concat([part, after])])
  }
}
