import { describe, expect, it } from 'vitest'
import { answer, connect, disconnect, field, packet, pingreq, publish, subscribe, unsubscribe } from '../packets.ts'
import { Desk, ask, bare, next, rest } from './desk.ts'

// What a server must do by MQTT 3.1.1 (OASIS Standard, 29 October 2014), byte by byte; the numbers of its statements in brackets. Which test
// holds which statement: ../STATEMENTS.md.

const desk = new Desk()
const { come, dial, leave, listener, refusal, say } = desk
const bad = Buffer.from([0x61, 0xed, 0xa0, 0x80])

describe('names and texts', () => {
  it('an ill-formed text ends the connection wherever it stands [1.5.3-1, 3.1.3-4, -10, -11, 3.3.2-1, 3.8.3-1, 3.10.3-1]', async () => {
    for (const hello of [connect(bad), connect('a', { will: { topic: bad, payload: 'x' } }), connect('a', { user: bad })]) {
      expect(await refusal(hello, null)).toEqual(['nothing'])
    }
    for (const bytes of [publish(bad, 'x'), subscribe(1, [bad, 0]), unsubscribe(1, bad)]) expect(await refusal(bytes)).toEqual(['nothing'])
    expect(desk.stored).toEqual([])
  })

  it('so does a NUL [1.5.3-2, 4.7.3-2]', async () => {
    for (const bytes of [publish('a\0', 'x'), subscribe(1, ['a\0', 0]), unsubscribe(1, 'a\0')]) {
      expect(await refusal(bytes)).toEqual(['nothing'])
    }
    expect(await refusal(connect('a\0'), null)).toEqual(['nothing'])
  })

  it('U+FEFF stays where it is, and nothing is normalised [1.5.3-3, 4.7.3-4]', async () => {
    const client = await listener('#')
    for (const topic of ['\ufeffa', 'caf\u00e9', 'cafe\u0301', 'A', 'a ']) await say(topic, 'x', 0)
    expect(await rest(client)).toEqual(['\ufeffa', 'caf\u00e9', 'cafe\u0301', 'A', 'a '].map((topic) => `publish 0 ${topic} = x`))
    const strict = await listener('caf\u00e9', 0, 'strict')
    await say('cafe\u0301', 'other', 0)
    await say('caf\u00e9', 'same', 0)
    expect(await rest(strict)).toEqual(['publish 0 caf\u00e9 = same'])
  })

  it('topic and filter have a character at least [4.7.3-1]', async () => {
    for (const bytes of [publish('', 'x'), subscribe(1, ['', 0]), unsubscribe(1, '')]) expect(await refusal(bytes)).toEqual(['nothing'])
  })
})

describe('fixed bits', () => {
  it('of another value end the connection [2.2.2-1, -2, 3.6.1-1, 3.8.1-1, 3.10.1-1, 3.14.1-1]', async () => {
    for (const good of [subscribe(1, ['a', 0]), unsubscribe(1, 'a'), answer('pubrel', 1), answer('puback', 1), pingreq, disconnect]) {
      const wrong = Buffer.from(good)
      wrong[0] = (wrong[0] ?? 0) ^ 0x01
      expect(await refusal(wrong), good.toString('hex')).toEqual(['nothing'])
    }
  })

  it('a packet number of 0 ends it too [2.3.1-1]', async () => {
    for (const bytes of [publish('a', 'x', { qos: 1, id: 0 }), subscribe(0, ['a', 0]), unsubscribe(0, 'a')]) {
      expect(await refusal(bytes)).toEqual(['nothing'])
    }
  })
})

describe('CONNECT', () => {
  it('comes first, and once [3.1.0-1, -2]', async () => {
    expect(await refusal(publish('a', 'x'), null)).toEqual(['nothing'])
    expect(await refusal(connect('n1'))).toEqual(['nothing'])
  })

  it('of another protocol is closed, of another level answered with 1 [3.1.2-1, -2]', async () => {
    expect(await refusal(packet(0x10, field('HTTP'), Buffer.from([4, 2, 0, 60]), field('a')), null)).toEqual(['nothing'])
    expect(await refusal(packet(0x10, field('MQTT'), Buffer.from([9, 2, 0, 60]), field('a')), null)).toEqual(['connack 00 01'])
  })

  it('has the fields that its flags announce and no other, and no contradicting flags [3.1.2-3, -9, -11, -13, -14, -15, -18 to -22, 3.1.4-1]', async () => {
    const hello = (flags: number, ...fields: string[]) => packet(0x10, field('MQTT'), Buffer.from([4, flags, 0, 60]), ...fields.map(field))
    const wrong = {
      'the reserved bit': hello(0x03, 'a'),
      'a will without its message': hello(0x06, 'a', 'will'),
      'a will that no flag announces': hello(0x02, 'a', 'will', 'gone'),
      'a QoS of no will': hello(0x0a, 'a'),
      'a will of QoS 3': hello(0x1e, 'a', 'will', 'gone'),
      'a retained will that is none': hello(0x22, 'a'),
      'a user that no flag announces': hello(0x02, 'a', 'user'),
      'no user where a flag announces one': hello(0x82, 'a'),
      'a password that no flag announces': hello(0x82, 'a', 'user', 'secret'),
      'no password where a flag announces one': hello(0xc2, 'a', 'user'),
      'a password without a user': hello(0x42, 'a', 'secret'),
    }
    for (const [what, bytes] of Object.entries(wrong)) expect(await refusal(bytes, null), what).toEqual(['nothing'])
  })

  it('brings its fields in their order: name, will, user, password [3.1.3-1]', async () => {
    const judged: string[][] = []
    const nodes = {
      judge: (user: string, password: string) => {
        judged.push([user, password])
        return { node: null }
      },
      needsSecret: () => false,
    }
    await desk.open({ nodes })
    const hears = await listener('will/#')
    const client = await come('n1', { will: { topic: 'will/n1', payload: 'gone', qos: 1 }, user: 'u', password: 'p' })
    expect(desk.broker.clients()).toContain('n1')
    client.end()
    expect(bare(await next(hears, 1))).toEqual(['publish 1 will/n1 = gone'])
    expect(judged).toContainEqual(['u', 'p'])
  })

  it('has a name, of 1 to 23 letters and digits at least [3.1.3-3, -5]', async () => {
    expect(await refusal(packet(0x10, field('MQTT'), Buffer.from([4, 2, 0, 60])), null)).toEqual(['nothing'])
    for (const name of ['a', '0123456789abcdefghijklm', 'nopqrstuvwxyzABCDEFGHIJ', 'KLMNOPQRSTUVWXYZ']) await come(name)
    expect(desk.broker.clients()).toHaveLength(4)
  })

  it('without a name gets one of its own, in a clean session only [3.1.3-6 to -9]', async () => {
    const [one, other] = [await come(''), await come('')]
    expect(new Set(desk.broker.clients()).size).toBe(2)
    await ask(one, subscribe(1, ['a', 0]))
    await say('a', 'x', 0)
    expect([await rest(one), await rest(other)]).toEqual([['publish 0 a = x'], []])
    expect(await refusal(connect('', { clean: false }), null)).toEqual(['connack 00 02'])
  })

  it('that is refused takes what follows it along [3.1.4-5, 3.2.2-4, -5]', async () => {
    const hears = await listener('#')
    expect(await refusal(Buffer.concat([connect('', { clean: false }), publish('a', 'x')]), null)).toEqual(['connack 00 02'])
    expect(await rest(hears)).toEqual([])
    await desk.open({ nodes: { judge: () => null, needsSecret: () => false } })
    expect(await refusal(Buffer.concat([connect('n2', { user: 'u', password: 'p' }), publish('a', 'x')]), null)).toEqual(['connack 00 05'])
    expect(desk.stored).toEqual([])
  })

  it('that fits no code is closed without any [3.2.2-6]', async () => {
    expect(await refusal(packet(0x10, field('MQTT'), Buffer.from([4, 3, 0, 60]), field('a')), null)).toEqual(['nothing'])
  })

  it('throws out who had the name before [3.1.3-2, 3.1.4-2, -4]', async () => {
    const [first, other] = [await come('same'), await come('other')]
    await come('same')
    expect(await first.closedWithin(2000)).toBe(true)
    expect(await ask(other, pingreq)).toEqual(['pingresp'])
  })
})

describe('sessions', () => {
  it('CONNACK is the first packet, and says whether a session stood [3.2.0-1, 3.2.2-1 to -3, 3.1.2-4, -5, 4.1.0-1, -2]', async () => {
    const hello = connect('lasting', { clean: false })
    const first = await dial()
    expect(await ask(first, hello)).toEqual(['connack 00 00'])
    await ask(first, subscribe(1, ['q/#', 2]))
    await leave(first, 'lasting')
    await say('q/a', 'one')
    await say('q/b', 'two')
    const again = await dial()
    const heard = await ask(again, hello, 3)
    expect(bare(heard)).toEqual(['connack 01 00', 'publish 1 q/a = one', 'publish 1 q/b = two'])
    again.end()
  })

  it('a clean one forgets the earlier, and is forgotten [3.1.2-6, 3.1.4-3]', async () => {
    const kept = await dial()
    await ask(kept, connect('n1', { clean: false }))
    await ask(kept, subscribe(1, ['q', 1]))
    await leave(kept, 'n1')
    const clean = await dial()
    expect(await ask(clean, connect('n1'))).toEqual(['connack 00 00'])
    await say('q', 'x')
    expect(await rest(clean)).toEqual([])
    await ask(clean, subscribe(1, ['q', 1]))
    await leave(clean, 'n1')
    const last = await dial()
    expect(await ask(last, connect('n1', { clean: false }))).toEqual(['connack 00 00'])
    await say('q', 'y')
    expect(await rest(last)).toEqual([])
  })

  it('what is retained outlives the session of who sent it [3.1.2-7]', async () => {
    const sender = await come('sender')
    await ask(sender, publish('r', 'kept', { qos: 1, retain: true }))
    await leave(sender, 'sender')
    const hears = await listener('r', 1)
    expect(bare(await next(hears, 1))).toEqual(['publish 1 retained r = kept'])
  })
})

describe('wills', () => {
  it('come once, when the connection breaks, and are gone afterwards [3.1.2-8, -10, -12]', async () => {
    const hears = await listener('will/#', 0)
    const client = await come('n1', { will: { topic: 'will/n1', payload: 'gone' } })
    client.end()
    expect(await next(hears, 1)).toEqual(['publish 0 will/n1 = gone'])
    const again = await come('n1')
    again.end()
    expect(await rest(hears)).toEqual([])
  })

  it('are dropped at DISCONNECT [3.1.2-10, 3.14.4-3]', async () => {
    const hears = await listener('will/#', 0)
    const client = await come('n1', { will: { topic: 'will/n1', payload: 'gone' } })
    client.send(disconnect)
    expect(await client.closedWithin(2000)).toBe(true)
    expect(await rest(hears)).toEqual([])
  })

  it.each([false, true])('are retained or not, as asked: %s [3.1.2-16, -17]', async (retain) => {
    const hears = await listener('will/#', 0)
    const client = await come('n1', { will: { topic: 'will/n1', payload: 'gone', qos: 1, retain } })
    client.end()
    expect(await next(hears, 1)).toEqual(['publish 0 will/n1 = gone'])
    const later = await come('later')
    await ask(later, subscribe(1, ['will/#', 0]))
    expect(await rest(later)).toEqual(retain ? ['publish 0 retained will/n1 = gone'] : [])
  })
})
