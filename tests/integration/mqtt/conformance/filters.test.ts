import { describe, expect, it } from 'vitest'
import { answer, connect, pingreq, publish, subscribe, unsubscribe } from '../packets.ts'
import { Desk, ask, bare, next, rest } from './desk.ts'

// What a server must do by MQTT 3.1.1 (OASIS Standard, 29 October 2014), byte by byte; the numbers of its statements in brackets. Which test
// holds which statement: ../STATEMENTS.md.

const desk = new Desk()
const { come, dial, leave, listener, refusal, say } = desk

describe('SUBSCRIBE and UNSUBSCRIBE', () => {
  it('are acknowledged under their number, filter by filter in their order, with no code but 0, 1, 2 and 128 [2.3.1-7, 3.8.4-1, -2, -4, -5, 3.9.3-1, -2, 3.10.4-4, -6]', async () => {
    const client = await come('n1')
    const filters: [string, number][] = [
      ['a', 2],
      ['closed', 1],
      ['b/#', 0],
      ['+/c', 1],
    ]
    expect(await ask(client, subscribe(4711, ...filters))).toEqual(['suback #4711 02 80 00 01'])
    expect(await ask(client, unsubscribe(4712, 'a', 'b/#', 'unknown'))).toEqual(['unsuback #4712'])
    for (const topic of ['a', 'b/x', 'd/c']) await say(topic, 'x', 0)
    expect(await rest(client)).toEqual(['publish 0 d/c = x'])
  })

  it('have a filter at least, a QoS of 0 to 2 and nothing else in that byte [3.8.3-3, -4, 3.10.3-2]', async () => {
    for (const bytes of [subscribe(1), unsubscribe(1), subscribe(1, ['a', 3]), subscribe(1, ['a', 0x11])]) {
      expect(await refusal(bytes)).toEqual(['nothing'])
    }
  })

  it('wildcards stand alone in their level, # at the end [3.8.3-2, 4.7.1-2, -3]', async () => {
    const client = await come('n1')
    for (const filter of ['#', '+', 'a/#', '+/b', 'a/+/c', '/+'])
      expect(await ask(client, subscribe(1, [filter, 0]))).toEqual(['suback #1 00'])
    for (const filter of ['a#', 'a/#/b', 'a+', '+a/b']) expect(await refusal(subscribe(1, [filter, 0])), filter).toEqual(['nothing'])
  })

  it('the same filter again takes the place of the first and brings what is retained again [3.8.4-3]', async () => {
    await say('a', 'kept', 1, true)
    const client = await come('n1')
    expect(await ask(client, subscribe(1, ['a', 0]), 2)).toEqual(['suback #1 00', 'publish 0 retained a = kept'])
    expect(bare(await ask(client, subscribe(2, ['a', 1]), 2))).toEqual(['suback #2 01', 'publish 1 retained a = kept'])
    await say('a', 'news')
    expect(bare(await rest(client))).toEqual(['publish 1 a = news'])
  })

  it('the lesser QoS counts, through a wildcard, for what is retained and in a lasting session too [3.8.4-6]', async () => {
    const sender = await come('n1')
    const sayAll = async () => {
      await say('a/b', 'low', 0)
      await say('a/b', 'high', 1)
      await ask(sender, publish('a/b', 'highest', { qos: 2, id: 1 }))
      await ask(sender, answer('pubrel', 1))
    }
    const [zero, one] = [await listener('a/#', 0, 'zero'), await listener('a/+', 1, 'one')]
    const lasting = await come('lasting', { clean: false })
    await ask(lasting, subscribe(1, ['a/b', 0], ['+/b', 1]))
    const none = await come('none', { clean: false })
    await ask(none, subscribe(1, ['a/b', 0]))
    await sayAll()
    const low = ['publish 0 a/b = low', 'publish 0 a/b = high', 'publish 0 a/b = highest']
    const high = ['publish 0 a/b = low', 'publish 1 a/b = high', 'publish 1 a/b = highest']
    expect([await rest(zero), await rest(none)]).toEqual([low, low])
    expect([bare(await rest(one)), bare(await rest(lasting))]).toEqual([high, high])
    await leave(lasting, 'lasting')
    await sayAll()
    const again = await dial()
    const heard = bare(await ask(again, connect('lasting', { clean: false }), 5))
    expect(heard).toEqual(['connack 01 00', ...high.slice(1).map((line) => line.replace('1 ', '1 dup ')), ...high.slice(1)])
    await say('kept', 'x', 1, true)
    const later = await come('later')
    expect(await ask(later, subscribe(1, ['kept', 0]), 2)).toEqual(['suback #1 00', 'publish 0 retained kept = x'])
  })

  it('a filter is given up by its own letters only, is acknowledged even if unknown, and what has begun is brought to its end [3.10.4-1 to -3, -5]', async () => {
    const client = await listener('a/b', 2)
    expect(await ask(client, unsubscribe(2, 'a/+'))).toEqual(['unsuback #2'])
    const sender = await come('n1')
    await ask(sender, publish('a/b', 'x', { qos: 2, id: 9 }))
    await ask(sender, answer('pubrel', 9))
    const [begun] = await next(client, 1)
    const id = Number(/^publish 2 #(\d+) a\/b = x$/.exec(begun ?? '')?.[1])
    expect(await ask(client, unsubscribe(3, 'a/b'))).toEqual(['unsuback #3'])
    await say('a/b', 'later')
    expect(await ask(client, answer('pubrec', id))).toEqual([`pubrel #${id}`])
    client.send(answer('pubcomp', id))
    expect(await rest(client)).toEqual([])
  })
})

it('PINGREQ is answered [3.12.4-1]', async () => {
  expect(await ask(await come('n1'), pingreq)).toEqual(['pingresp'])
})

it('what breaks the protocol ends its connection and no other [4.8.0-1]', async () => {
  const other = await come('other')
  for (const bytes of [Buffer.from('f000', 'hex'), Buffer.from('20020000', 'hex'), Buffer.from('30ffffffff01', 'hex')]) {
    expect(await refusal(bytes)).toEqual(['nothing'])
  }
  expect(await ask(other, pingreq)).toEqual(['pingresp'])
})
