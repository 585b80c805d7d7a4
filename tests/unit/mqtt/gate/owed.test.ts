import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Owed } from '../../../../server/mqtt/gate/owed.ts'
import { packetTypes } from '../../../../server/mqtt/gate/wire.ts'
import { publishPacket } from '../../../integration/mqtt/raw-client.ts'

const { puback, pubrec, pubcomp } = packetTypes

describe('answers owed', () => {
  it('are known from what was sent, however it is cut', () => {
    const stream = Buffer.concat([
      Buffer.from([0x20, 2, 0, 0]),
      publishPacket('server/alert', Buffer.alloc(200, 50), 1, 300),
      publishPacket('b', 'x', 0),
      publishPacket('c', '', 1, 2),
    ])
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 50 }), (size) => {
        const owed = new Owed()
        for (let at = 0; at < stream.length; at += size) owed.sent(stream.subarray(at, at + size))
        expect([owed.answer(pubrec, 300), owed.answer(pubcomp, 300), owed.answer(puback, 300), owed.answer(puback, 2)]).toEqual([
          false,
          false,
          true,
          true,
        ])
      }),
    )
  })

  it('of QoS 2 are PUBREC, then PUBCOMP; a PUBREC may come again', () => {
    const owed = new Owed()
    const packet = publishPacket('a', 'x', 1, 5)
    packet[0] = 0x34
    owed.sent(packet)
    expect([
      owed.answer(puback, 5),
      owed.answer(pubcomp, 5),
      owed.answer(pubrec, 5),
      owed.answer(pubrec, 5),
      owed.answer(pubcomp, 5),
    ]).toEqual([false, false, true, true, true])
  })
})
