import { describe, expect, it } from 'vitest'
import { answer, connect, publish, subscribe } from '../packets.ts'
import { Desk, ask, bare, next, rest } from './desk.ts'

// What a server must do by MQTT 3.1.1 (OASIS Standard, 29 October 2014), byte by byte; the numbers of its statements in brackets. Which test
// holds which statement: ../STATEMENTS.md.

const desk = new Desk()
const { come, dial, leave, listener, refusal, say } = desk

describe('PUBLISH to the server', () => {
  it('is answered by its QoS, under its number [2.3.1-6, 3.3.4-1, 4.3.2-2]', async () => {
    const client = await come('n1')
    expect(await ask(client, publish('a', 'x', { qos: 1, id: 77 }))).toEqual(['puback #77'])
    expect(await ask(client, publish('a', 'y', { qos: 2, id: 78 }))).toEqual(['pubrec #78'])
    expect(await ask(client, answer('pubrel', 78))).toEqual(['pubcomp #78'])
    client.send(publish('a', 'z'))
    expect(await rest(client)).toEqual([])
    expect(desk.stored).toEqual(['a = x', 'a = y', 'a = z'])
  })

  it('of QoS 1 whose number was acknowledged is a new message, DUP or not [4.3.2-2]', async () => {
    const client = await come('n1')
    for (const dup of [false, true]) expect(await ask(client, publish('a', `${dup}`, { qos: 1, id: 5, dup }))).toEqual(['puback #5'])
    expect(desk.stored).toEqual(['a = false', 'a = true'])
  })

  it('of QoS 2 is handed on once, however often it comes before PUBREL, and anew after PUBCOMP [4.3.3-2]', async () => {
    const hears = await listener('a', 0)
    const client = await come('n1')
    for (const dup of [false, true]) expect(await ask(client, publish('a', 'x', { qos: 2, id: 5, dup }))).toEqual(['pubrec #5'])
    expect(await ask(client, answer('pubrel', 5))).toEqual(['pubcomp #5'])
    expect(await rest(hears)).toEqual(['publish 0 a = x'])
    expect(await ask(client, publish('a', 'y', { qos: 2, id: 5 }))).toEqual(['pubrec #5'])
    expect(await ask(client, answer('pubrel', 5))).toEqual(['pubcomp #5'])
    expect(await rest(hears)).toEqual(['publish 0 a = y'])
  })

  it('is answered in the order in which it came [4.6.0-2, -3]', async () => {
    const client = await come('n1')
    const ids = Array.from({ length: 30 }, (_, n) => n + 1)
    const both = ids.map((id) => publish('a', 'x', { qos: id % 2 === 0 ? 1 : 2, id }))
    client.send(Buffer.concat(both))
    const heard = await next(client, ids.length)
    expect(heard.filter((line) => line.startsWith('puback'))).toEqual(ids.filter((id) => id % 2 === 0).map((id) => `puback #${id}`))
    expect(heard.filter((line) => line.startsWith('pubrec'))).toEqual(ids.filter((id) => id % 2 === 1).map((id) => `pubrec #${id}`))
  })

  it('with a wildcard, QoS 3, or DUP with QoS 0 is closed [3.3.1-2, -4, 3.3.2-2, 4.7.1-1]', async () => {
    for (const bytes of [publish('a/+', 'x'), publish('a/#', 'x'), publish('a', 'x', { qos: 3 }), publish('a', 'x', { dup: true })]) {
      expect(await refusal(bytes)).toEqual(['nothing'])
    }
    expect(desk.stored).toEqual([])
  })

  it('of who may not is acknowledged or closed, never anything else [3.3.5-2]', async () => {
    for (const verdict of ['quarantine', 'close'] as const) {
      await desk.open({ policy: { publish: (_topic, node) => ({ verdict, reason: 'no', node, share: false }), subscribe: () => true } })
      const client = await come('n1')
      expect(await ask(client, publish('a', 'x', { qos: 1, id: 9 }))).toEqual([verdict === 'close' ? 'nothing' : 'puback #9'])
      expect(desk.stored).toEqual([])
    }
  })

  it('that cannot be kept just now ends the connection, unacknowledged [4.8.0-2]', async () => {
    await desk.open({ onMessage: () => Promise.reject(new Error('disk full')) })
    expect(await refusal(publish('a', 'x', { qos: 1 }))).toEqual(['nothing'])
  })

  it('that keeps its message replaces what was kept, with QoS 0 too; without the flag it touches nothing; empty it erases [3.3.1-5 to -12]', async () => {
    const hears = await listener('r', 1)
    const client = await come('n1')
    const kept = async (clientId: string) => {
      const later = await come(clientId)
      await ask(later, subscribe(1, ['r', 1]))
      return bare(await rest(later))
    }
    await ask(client, publish('r', 'one', { qos: 1, retain: true }))
    expect(await kept('k1')).toEqual(['publish 1 retained r = one'])
    client.send(publish('r', 'two', { retain: true }))
    await rest(client)
    expect(await kept('k2')).toEqual(['publish 0 retained r = two'])
    await ask(client, publish('r', 'three', { qos: 1 }))
    await ask(client, publish('r', '', { qos: 1, id: 3 }))
    expect(await kept('k3')).toEqual(['publish 0 retained r = two'])
    await ask(client, publish('r', '', { qos: 1, id: 2, retain: true }))
    expect(await kept('k4')).toEqual([])
    // who had subscribed before heard each of them as news
    expect(bare(await rest(hears))).toEqual([
      'publish 1 r = one',
      'publish 0 r = two',
      'publish 1 r = three',
      'publish 1 r = ',
      'publish 1 r = ',
    ])
  })
})

describe('PUBLISH from the server', () => {
  it('of QoS 0 has no number; of QoS 1 and 2 one that is not 0 and not in use; none is a DUP [2.3.1-4, -5, 4.3.1-1, 4.3.2-1, 4.3.3-1]', async () => {
    const hears = await listener('a', 2)
    const sender = await come('n1')
    for (let n = 0; n < 30; n++) {
      await say('a', 'x', n % 2 === 0 ? 1 : 0)
      await ask(sender, publish('a', 'y', { qos: 2, id: n + 1 }))
      await ask(sender, answer('pubrel', n + 1))
    }
    const heard = await rest(hears)
    expect(heard.filter((line) => line === 'publish 0 a = x')).toHaveLength(15)
    const numbers = heard.flatMap((line) => /^publish [12] #(\d+) a/.exec(line)?.[1] ?? [])
    expect(numbers).toHaveLength(45)
    expect(new Set(numbers).size).toBe(45)
    expect(numbers).not.toContain('0')
    expect(heard.join()).not.toContain('dup')
  })

  it('does not hand on the DUP of who sent it [3.3.1-3]', async () => {
    const hears = await listener('a', 1)
    const client = await come('n1')
    await ask(client, publish('a', 'x', { qos: 1, id: 5, dup: true }))
    expect(bare(await next(hears, 1))).toEqual(['publish 1 a = x'])
  })

  it('of QoS 2 goes PUBREC, PUBREL, PUBCOMP under one number, in order [2.3.1-6, 4.3.3-1, 4.6.0-4]', async () => {
    const hears = await listener('a', 2)
    const sender = await come('n1')
    for (let id = 1; id <= 5; id++) {
      await ask(sender, publish('a', String(id), { qos: 2, id }))
      await ask(sender, answer('pubrel', id))
    }
    const heard = await next(hears, 5)
    expect(bare(heard)).toEqual([1, 2, 3, 4, 5].map((n) => `publish 2 a = ${n}`))
    const ids = heard.map((line) => Number(/#(\d+)/.exec(line)?.[1]))
    hears.send(Buffer.concat(ids.map((id) => answer('pubrec', id))))
    expect(await next(hears, 5)).toEqual(ids.map((id) => `pubrel #${id}`))
    for (const id of ids) hears.send(answer('pubcomp', id))
    expect(await rest(hears)).toEqual([])
  })

  it('goes to all whose filter matches, with the greatest QoS that they asked for, in order of arrival [3.3.2-3, 3.3.5-1, 4.5.0-1, 4.6.0-5, -6]', async () => {
    const [one, two, none] = [await listener('o/#', 1, 'one'), await come('two'), await listener('x/#', 1, 'none')]
    await ask(two, subscribe(1, ['o/a', 0], ['o/#', 1]))
    for (let n = 0; n < 20; n++) await say('o/a', String(n))
    const inOrder = Array.from({ length: 20 }, (_, n) => `publish 1 o/a = ${n}`)
    expect(bare(await rest(one))).toEqual(inOrder)
    expect(bare(await rest(two)).filter((line) => line.startsWith('publish 1'))).toEqual(inOrder)
    expect(await rest(none)).toEqual([])
  })

  it('that was not acknowledged comes again in its order, under its number and marked; after PUBREC only PUBREL [3.3.1-1, 4.3.3-1, 4.4.0-1, 4.6.0-1]', async () => {
    const hello = connect('lasting', { clean: false })
    const first = await dial()
    await ask(first, hello)
    await ask(first, subscribe(1, ['a', 2]))
    const sender = await come('n1')
    for (let id = 1; id <= 3; id++) {
      await ask(sender, publish('a', String(id), { qos: 2, id }))
      await ask(sender, answer('pubrel', id))
    }
    await say('a', '4')
    const heard = await next(first, 4)
    const ids = heard.map((line) => Number(/#(\d+)/.exec(line)?.[1]))
    expect(await ask(first, answer('pubrec', ids[0] ?? 0))).toEqual([`pubrel #${ids[0]}`])
    await leave(first, 'lasting')
    const again = await dial()
    expect(await ask(again, hello, 5)).toEqual([
      'connack 01 00',
      `pubrel #${ids[0]}`,
      `publish 2 dup #${ids[1]} a = 2`,
      `publish 2 dup #${ids[2]} a = 3`,
      `publish 1 dup #${ids[3]} a = 4`,
    ])
  })
})
