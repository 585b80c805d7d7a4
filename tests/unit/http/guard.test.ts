import { hostname } from 'node:os'
import { describe, expect, test } from 'vitest'
import { Guard, mayAct } from '../../../server/http/guard.ts'
import type { Asked } from '../../../server/http/guard.ts'
import { People } from '../../../server/http/people.ts'
import { createMemoryStore } from '../../../server/storage/memory.ts'

const asked = (more: Partial<Asked>): Asked => ({
  host: '192.168.1.5:8420',
  origin: undefined,
  fetchSite: undefined,
  cookie: undefined,
  remote: '192.168.1.20',
  ...more,
})
const setup = (viewersWithoutLogin = false) => ({ names: ['kiln.example'], viewersWithoutLogin })
const guardOf = (people = new People(createMemoryStore(), () => 0), open = false) => new Guard(people, () => setup(open))

// reliability 6: S13 to S15
describe('who asks, and from where', () => {
  test.each([
    ['192.168.1.5:8420', true],
    ['[fd00::1]:8420', true],
    ['localhost:8420', true],
    [`${hostname().toLowerCase()}.local`, true],
    ['KILN.example', true],
    ['evil.example', false],
    ['kiln.example.evil.example', false],
    ['', false],
    [undefined, false],
    ['a b', false],
    ['kiln.example:99999999', false],
  ])('the host %s is known: %s', (host, known) => {
    expect(guardOf().knowsHost(host)).toBe(known)
  })

  test.each([
    [{ origin: 'http://192.168.1.5:8420' }, true],
    [{ origin: undefined }, true],
    [{ origin: 'http://192.168.1.5:8421' }, false],
    [{ origin: 'http://evil.example' }, false],
    [{ origin: 'null' }, false],
    [{ origin: 'http://192.168.1.5:8420', fetchSite: 'cross-site' }, false],
    [{ origin: 'http://192.168.1.5:8420', fetchSite: 'same-origin' }, true],
    [{ origin: 'http://192.168.1.5:8420', fetchSite: 'same-site' }, false],
  ])('%j may change something: %s', (more, may) => {
    expect(guardOf().fromOwnPage(asked(more))).toBe(may)
  })

  test('whoever sits at this machine is the owner, but not by a name of another', () => {
    expect(guardOf().who(asked({ host: 'localhost:8420', remote: '127.0.0.1' }))).toBe('owner')
    expect(guardOf().who(asked({ host: '192.168.1.5:8420', remote: '127.0.0.1' }))).toBe('anyone')
    expect(guardOf().who(asked({ host: 'localhost:8420', remote: '192.168.1.20' }))).toBe('anyone')
  })

  test('others look on only where the owner allows it', () => {
    expect(guardOf(undefined, true).who(asked({}))).toBe('viewer')
    expect(guardOf(undefined, false).who(asked({}))).toBe('anyone')
  })

  test('each may do what those before it may', () => {
    expect(mayAct('owner', 'operator')).toBe(true)
    expect(mayAct('operator', 'owner')).toBe(false)
    expect(mayAct('anyone', 'viewer')).toBe(false)
    expect(mayAct('viewer', 'viewer')).toBe(true)
  })
})

describe('pairing', () => {
  test('an invitation is good once, and only for a quarter of an hour', async () => {
    let now = 0
    const people = new People(createMemoryStore(), () => now)
    const code = people.invite('operator', 'tablet')
    const paired = await people.pair(code)
    expect(paired?.device).toMatchObject({ person: 'operator', label: 'tablet' })
    expect(await people.pair(code)).toBeNull()
    const late = people.invite('owner', '')
    now += 15 * 60_000 + 1
    expect(await people.pair(late)).toBeNull()
    expect(await people.pair('guess')).toBeNull()
  })

  test('a paired browser is known after a restart, a removed one is not, and no secret is in the store', async () => {
    const store = createMemoryStore()
    const people = new People(store, () => 0)
    expect(people.isNew()).toBe(true)
    const paired = await people.pair(people.invite('owner', ''))
    if (!paired) throw new Error('not paired')
    expect(JSON.stringify(await store.documents('device'))).not.toContain(paired.secret)
    const again = new People(store, () => 0)
    await again.start()
    expect(again.isNew()).toBe(false)
    const guard = guardOf(again)
    const cookie = `other=1; kiln-device=${paired.secret}`
    expect(guard.who(asked({ cookie }))).toBe('owner')
    expect(await again.remove(paired.device.id)).toBe(true)
    expect(guard.who(asked({ cookie }))).toBe('anyone')
    const third = new People(store, () => 0)
    await third.start()
    expect(third.deviceOf(paired.secret)).toBeNull()
  })

  test('after ten wrong codes within a minute an address waits, right code or not, and no other does', async () => {
    let now = 0
    const people = new People(createMemoryStore(), () => now)
    const [code, another] = [people.invite('owner', ''), people.invite('operator', '')]
    for (let i = 0; i < 10; i++) await expect(people.pairFrom('x', 'guess')).rejects.toMatchObject({ code: 'code-used' })
    await expect(people.pairFrom('x', code)).rejects.toMatchObject({ code: 'too-many-tries' })
    expect((await people.pairFrom('y', another)).device.person).toBe('operator')
    now += 60_001
    expect((await people.pairFrom('x', code)).device.person).toBe('owner')
    expect(people.register.newest(20).map(({ what, from }) => `${what} ${from}`)).toEqual(Array(10).fill('pair-refused x'))
  })
})
