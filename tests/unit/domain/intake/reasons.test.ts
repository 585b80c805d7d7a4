import { describe, expect, it } from 'vitest'
import { refusalReasons } from '../../../../server/contract/vocabulary.ts'
import type { RefusalReason } from '../../../../server/contract/vocabulary.ts'
import { Story, birth, pack, start } from './story.ts'

const text = (words: string) => new TextEncoder().encode(words)
const good = { n: 'yard/n1/outlet', u: 'Cel', v: 31 }
const readings = (payload: unknown) => (story: Story) => void story.say(start + 9000, 'readings', payload)
const record = (wrong: unknown) => readings([wrong, good])

/** For each code of the registry, something that earns it: a code without one does not compile. */
const earns: Record<RefusalReason, (story: Story) => void> = {
  'bad-topic': (story) => void story.say(start, 'readings', [good], { topic: 'firing/1/yard' }),
  'other-site': (story) => void story.say(start, 'readings', [good], { topic: 'firing/1/meadow/n1/readings' }),
  'unknown-contract': (story) => void story.say(start, 'readings', [good], { topic: 'firing/2/yard/n1/readings' }),
  'unknown-kind': (story) => void story.say(start, 'weather', [good]),
  'too-many-nodes': (story) => {
    for (let i = 0; i < 65; i++) story.say(start, 'readings', { outlet: 31 }, { node: `n${i}` })
  },
  'pack-too-large': readings(text(' '.repeat(65_537))),
  'bad-utf8': readings(Uint8Array.of(0xff)),
  'bad-json': readings(text('{')),
  nested: record({ ...good, x: {} }),
  'duplicate-name': readings(text('{"outlet":31,"outlet":32}')),
  'unsafe-name': readings(text('{"__proto__":1}')),
  'not-a-pack': readings(7),
  'bad-info': (story) => void story.say(start, 'info', {}),
  'bad-channel': (story) => void story.say(start, 'info', birth('none', { channels: [{ n: '' }] })),
  'bad-state': (story) => void story.say(start, 'state', {}),
  'empty-pack': readings([]),
  'too-many-records': readings(Array.from({ length: 513 }, () => good)),
  'unknown-label': record({ ...good, must_: 1 }),
  'unknown-version': record({ ...good, bver: 42 }),
  'bad-base': record({ ...good, bt: 'now' }),
  'bad-identity': record({ n: 'yard/n1/boot', v: -1 }),
  conflict: (story) => {
    for (const outlet of [31, 32]) story.say(start, 'readings', pack({ seq: 1, up: 4, values: { outlet } }))
  },
  'not-a-record': record(7),
  'bad-name': record({ ...good, n: 'yard/n1/ä' }),
  'bad-number': record({ ...good, v: '31' }),
  'bad-field': record({ ...good, u: 7 }),
  'two-values': record({ ...good, vs: 'fault:open' }),
  'no-value': record({ n: 'yard/n1/outlet', u: 'Cel' }),
  'no-number': record({ n: 'yard/n1/door', vb: true }),
  'foreign-name': record({ ...good, bn: 'urn:dev:x:', n: 'outlet' }),
  'unknown-name': record({ ...good, n: 'yard/n1/a:b' }),
  'too-many-channels': readings(Array.from({ length: 65 }, (_, i) => ({ ...good, n: `yard/n1/c${i}` }))),
  'bad-time': record({ ...good, t: 1_500_000_000 }),
  'no-unit': record({ n: 'yard/n1/core', v: 31 }),
  'unknown-unit': record({ ...good, u: 'degF' }),
  'unit-version': record({ ...good, n: 'yard/n1/co', u: 'ppm' }),
  'wrong-unit': (story) => {
    story.say(start, 'info', birth('none'))
    story.say(start, 'readings', [{ ...good, u: 'K', v: 304 }])
  },
  'unknown-fault': record({ n: 'yard/n1/outlet', vs: 'fault:melted' }),
  'out-of-range': record({ ...good, v: 99_999 }),
}

describe('every reason of the registry', () => {
  it.each([...refusalReasons])('%s is given, and counted at its node', (reason) => {
    const story = new Story()
    earns[reason](story)
    expect(story.reasons()).toContain(reason)
    const refusal = story.refused.find((refused) => refused.reason === reason)
    const node = refusal?.node ?? null
    if (node !== null) expect(story.node(node).refused[reason]).toBeGreaterThan(0)
  })
})
