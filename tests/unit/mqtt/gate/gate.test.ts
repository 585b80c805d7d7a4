import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Gate } from '../../../../server/mqtt/gate/gate.ts'
import { gateLimits } from '../../../../server/mqtt/gate/limits.ts'
import { connectPacket, publishPacket } from '../../../integration/mqtt/raw-client.ts'

const hex = (text: string) => Buffer.from(text.replaceAll(' ', ''), 'hex')
const connect = connectPacket('n1')

/** Whole packets that came through, and the fault that ended it. */
function through(chunks: readonly Buffer[]): { passed: string; fault: string | null } {
  const gate = new Gate(gateLimits)
  const passed: Buffer[] = []
  for (const chunk of chunks) {
    const result = gate.take(chunk)
    if ('fault' in result) return { passed: Buffer.concat(passed).toString('hex'), fault: result.fault }
    passed.push(Buffer.from(result.passed))
  }
  return { passed: Buffer.concat(passed).toString('hex'), fault: null }
}

describe('the gate', () => {
  it.each([
    // statement of MQTT 3.1.1, Appendix B; what is sent after CONNECT; fault
    ['3.1.0-2 second CONNECT', connect.toString('hex'), 'second-connect'],
    ['2.2.2-2 reserved flags of SUBSCRIBE', '80 06 0001 0001 70 00', 'packet-flags'],
    ['2.3.1-1 packet id 0', '32 06 0001 70 0000 78', 'packet-id'],
    ['3.3.1-4 QoS 3', '36 06 0001 70 0001 78', 'publish-qos'],
    ['3.3.1-2 DUP with QoS 0', '38 04 0001 70 78', 'publish-dup'],
    ['3.3.2-2 wildcard in a topic', '30 04 0001 2b 78', 'bad-topic'],
    ['4.7.3-1 empty topic', '30 03 0000 78', 'bad-topic'],
    ['1.5.3-1 surrogate', '30 06 0003 eda080 78', 'forbidden-text'],
    ['1.5.3-2 NUL', '30 04 0001 00 78', 'forbidden-text'],
    ['3.8.3-3 SUBSCRIBE without filter', '82 02 0001', 'no-filter'],
    ['3.8.3-4 requested QoS 3', '82 06 0001 0001 70 03', 'subscribe-qos'],
    ['4.7.1-2 # not at the end', '82 08 0001 0003 232f70 00', 'bad-filter'],
    ['3.10.3-2 UNSUBSCRIBE without filter', 'a2 02 0001', 'no-filter'],
    ['a packet that only a server sends', '20 02 00 00', 'packet-type'],
    ['3.12 PINGREQ with a body', 'c0 01 00', 'long-packet'],
    ['2.2.3 a length of five bytes', '30 ff ff ff ff 01', 'bad-length'],
    ['a length over 64 KiB', '30 81 80 04', 'packet-too-large'],
    ['a topic that reaches beyond its packet', '30 03 0005 70', 'short-packet'],
  ])('closes: %s', (_statement, bytes, fault) => {
    expect(through([connect, hex(bytes)])).toEqual({ passed: connect.toString('hex'), fault })
  })

  it('3.1.0-1: lets nothing but a CONNECT begin', () => {
    expect(through([publishPacket('a', 'x', 0)])).toEqual({ passed: '', fault: 'not-connected' })
    expect(through([hex('c0 00')])).toEqual({ passed: '', fault: 'not-connected' })
    // 2.2.2-2: nor one with a bit of its first byte set
    for (const bit of [1, 2, 4, 8]) {
      expect(through([Buffer.concat([Buffer.from([0x10 | bit]), connect.subarray(1)])])).toEqual({ passed: '', fault: 'not-connected' })
    }
  })

  it('1.5.3-3: keeps U+FEFF', () => {
    const packet = publishPacket('\ufeffa', 'x', 0)
    expect(through([connect, packet])).toEqual({ passed: Buffer.concat([connect, packet]).toString('hex'), fault: null })
  })

  it('gives the same whatever the cuts between the bytes', () => {
    const good = [
      publishPacket('firing/1/yard/n1/readings', '{}', 1, 7),
      hex('c0 00'),
      publishPacket('a', Buffer.alloc(300, 1), 0),
      hex('82 06 0001 0001 70 01'),
    ]
    const bad = [hex('30 04 0001 00 78'), hex('c1 00')]
    const streams = fc.array(fc.constantFrom(...good, ...bad), { maxLength: 6 })
    fc.assert(
      fc.property(streams, fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1 }), (packets, cuts) => {
        const stream = Buffer.concat([connect, ...packets])
        const chunks: Buffer[] = []
        for (let at = 0, n = 0; at < stream.length; n++) {
          const size = cuts[n % cuts.length] ?? 1
          chunks.push(stream.subarray(at, at + size))
          at += size
        }
        const cut = through(chunks)
        const whole = through([stream])
        expect(cut.fault).toBe(whole.fault)
        // the packets before a fault may be let through or not, but none of it twice or in part
        expect(stream.toString('hex').startsWith(cut.passed)).toBe(true)
        if (whole.fault === null) expect(cut.passed).toBe(whole.passed)
      }),
    )
  })

  it('holds 64 KiB at most, whatever is sent', () => {
    fc.assert(
      fc.property(fc.array(fc.uint8Array({ maxLength: 200 }), { maxLength: 30 }), (chunks) => {
        const { passed } = through([connect, ...chunks.map((chunk) => Buffer.from(chunk))])
        expect(passed.startsWith(connect.toString('hex'))).toBe(true)
      }),
    )
  })

  it('takes a packet of exactly its limit, and none of a byte more', () => {
    const ofSize = (size: number) => publishPacket('a', Buffer.alloc(size - 3), 0)
    const most = gateLimits.packetBytes
    expect(through([connect, ofSize(most)]).fault).toBe(null)
    expect(through([connect, ofSize(most + 1)]).fault).toBe('packet-too-large')
  })

  it.each([
    ['of a clean session is refused', 2, { fault: 'wrong-answer' }],
    ['of a session that outlived its connection may belong to what was sent then', 0, { passed: hex('50 02 0005'), rest: hex('') }],
  ])('an answer of the wrong kind %s', (_what, cleanFlag, outcome) => {
    const gate = new Gate(gateLimits)
    const hello = Buffer.from(connect)
    hello[9] = cleanFlag
    gate.take(hello)
    gate.owed.sent(publishPacket('a', 'x', 1, 5))
    expect(gate.take(hex('50 02 0005'))).toEqual(outcome)
  })

  it.each([
    ['messages', publishPacket('a', 'x', 1, 5)],
    ['subscriptions', hex('82 06 0001 0001 70 01')],
    ['subscriptions given up', hex('a2 05 0001 0001 70')],
    ['pings', hex('c0 00')],
  ])('lets no more %s through at once than it is asked for, and hands back the rest', (_what, packet) => {
    const gate = new Gate(gateLimits)
    gate.take(connect)
    const half = packet.subarray(0, 1)
    expect(gate.take(Buffer.concat([packet, packet, packet, half]), 2)).toEqual({
      passed: Buffer.concat([packet, packet]),
      rest: Buffer.concat([packet, half]),
    })
    expect([gate.begun, gate.holding]).toEqual([2, false])
    expect(gate.take(Buffer.concat([packet, half]), 2)).toEqual({ passed: packet, rest: Buffer.alloc(0) })
    expect([gate.begun, gate.holding]).toEqual([1, true])
  })

  it('survives 100,000 packets with a few bits changed', () => {
    const valid = [
      connect,
      publishPacket('firing/1/yard/n1/readings', '{"outlet":31}', 1, 7),
      hex('82 06 0001 0001 70 01'),
      hex('a2 05 0001 0001 70'),
      hex('40 02 0001'),
    ]
    let seed = 7
    const chance = (below: number) => {
      seed = (Math.imul(seed, 1_103_515_245) + 12_345) & 0x7fffffff
      return (seed >> 8) % below
    }
    let faults = 0
    for (let n = 0; n < 100_000; n++) {
      const packet = Buffer.from(valid[chance(valid.length)] ?? connect)
      for (let flips = chance(3); flips > 0; flips--) packet[chance(packet.length)] = chance(256)
      if (through(chance(3) === 0 ? [packet] : [connect, packet]).fault !== null) faults++
    }
    expect(faults).toBeGreaterThan(10_000)
    expect(faults).toBeLessThan(90_000)
  })
})

describe('CONNECT', () => {
  const verdict = (bytes: string) => {
    const result = new Gate(gateLimits).take(hex(bytes))
    return 'fault' in result ? result : 'fine'
  }
  it.each([
    ['clean session without a name', '10 0c 0004 4d515454 04 02 000a 0000', 'fine'],
    ['3.1.3-8 lasting session without a name', '10 0c 0004 4d515454 04 00 000a 0000', { fault: 'client-id', answer: 2 }],
    ['3.1.2-2 version 5', '10 0e 0004 4d515454 05 02 000a 00 0001 70', { fault: 'mqtt-version', answer: 1 }],
    ['3.1.2-3 reserved flag', '10 0d 0004 4d515454 04 03 000a 0001 70', { fault: 'connect-flags' }],
    ['3.1.2-14 will QoS 3', '10 12 0004 4d515454 04 1e 000a 0001 70 0001 70 0000', { fault: 'connect-flags' }],
    ['3.1.2-11 will bits without a will', '10 0d 0004 4d515454 04 0a 000a 0001 70', { fault: 'connect-flags' }],
    ['3.1.2-22 password without a user', '10 10 0004 4d515454 04 42 000a 0001 70 0001 70', { fault: 'connect-flags' }],
    ['a will on a wildcard', '10 12 0004 4d515454 04 06 000a 0001 70 0001 23 0000', { fault: 'bad-will' }],
    ['a name with a control character', '10 0d 0004 4d515454 04 02 000a 0001 0a', { fault: 'forbidden-text' }],
    ['bytes left over', '10 0e 0004 4d515454 04 02 000a 0001 70 00', { fault: 'long-packet' }],
    ['another protocol', '10 0d 0004 48545450 04 02 000a 0001 70', { fault: 'not-mqtt' }],
  ])('%s', (_what, bytes, expected) => {
    expect(verdict(bytes)).toEqual(expected)
  })
})
