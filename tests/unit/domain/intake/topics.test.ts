import { describe, expect, it } from 'vitest'
import { Story, birth, pack, start } from './story.ts'

const sendOn = (topic: string) => {
  const story = new Story()
  story.say(start, 'readings', pack({ seq: 1, up: 4 }), { topic })
  return story
}

describe('topics', () => {
  it.each([
    ['another root', 'kiln/1/yard/n1/readings', 'bad-topic'],
    ['another contract', 'firing/2/yard/n1/readings', 'unknown-contract'],
    ['another site', 'firing/1/meadow/n1/readings', 'other-site'],
    ['a kind that is not known', 'firing/1/yard/n1/weather', 'unknown-kind'],
    ['too few levels', 'firing/1/yard/n1', 'bad-topic'],
    ['too many levels', 'firing/1/yard/n1/readings/x', 'bad-topic'],
    ['an empty level', 'firing/1/yard//readings', 'bad-topic'],
    ['capitals', 'firing/1/yard/N1/readings', 'bad-topic'],
    ['a node that starts with a digit', 'firing/1/yard/1n/readings', 'bad-topic'],
    ['a node of 33 characters', `firing/1/yard/${'n'.repeat(33)}/readings`, 'bad-topic'],
    ['a wildcard', 'firing/1/yard/+/readings', 'bad-topic'],
    ['a look-alike letter', 'firing/1/yаrd/n1/readings', 'bad-topic'],
  ])('%s is refused', (_, topic, reason) => {
    const story = sendOn(topic)
    expect(story.refused).toEqual([{ node: null, reason, record: null }])
    expect(story.inputs).toEqual([])
  })

  it('lets the service speak on its own topics without taking it for a node', () => {
    for (const topic of ['firing/1/yard/server/time', 'firing/1/yard/server/call/kiln-1', 'firing/1/yard/n1/cmd']) {
      const story = sendOn(topic)
      expect(story.refused).toEqual([])
      expect(story.inputs).toEqual([])
    }
  })

  it('knows 64 nodes and no more', () => {
    const story = new Story()
    for (let i = 0; i < 65; i++) story.say(start + i, 'readings', { outlet: 31 }, { node: `n${i}` })
    expect(story.refused).toEqual([{ node: null, reason: 'too-many-nodes', record: null }])
  })
})

describe('birth document', () => {
  it('tells period, step and probe of every channel', () => {
    const { inputs } = new Story().say(start, 'info', birth('none'))
    expect(inputs).toEqual([
      {
        kind: 'channel',
        channel: 'yard/n1/firebox',
        periodS: 5,
        lsb: 0.25,
        probe: { sensor: 'K', converter: 'max31855', linearised: false },
      },
      {
        kind: 'channel',
        channel: 'yard/n1/outlet',
        periodS: 5,
        lsb: 0.0625,
        probe: { sensor: 'ds18b20', converter: 'none', linearised: true },
      },
    ])
  })

  it('keeps its good channels beside a bad one', () => {
    const story = new Story()
    story.say(
      start,
      'info',
      birth('none', {
        channels: [
          { n: 'wall', sensor: 'lava' },
          { n: 'outlet', sensor: 'ds18b20', period: 10 },
        ],
      }),
    )
    expect(story.refused).toEqual([{ node: 'yard/n1', reason: 'bad-channel', record: 0 }])
    expect(story.inputs).toMatchObject([{ channel: 'yard/n1/outlet', periodS: 10 }])
  })

  it.each([
    ['a list', []],
    ['no channels', { boot: 1 }],
    ['a boot that is no number', birth('none', { boot: 'first' })],
    ['65 channels', birth('none', { channels: Array.from({ length: 65 }, (_, i) => ({ n: `c${i}` })) })],
  ])('%s is refused', (_, document) => {
    const story = new Story()
    story.say(start, 'info', document)
    expect(story.reasons()).toEqual(['bad-info'])
  })

  it('may be taken back with an empty payload', () => {
    const story = new Story()
    story.say(start, 'info', new Uint8Array(), { retained: true })
    expect(story.refused).toEqual([])
  })
})

describe('state document', () => {
  it('says up and lost as it turns, and lets readings outrank an old will', () => {
    const story = new Story()
    expect(story.say(start, 'state', { s: 'ready', boot: 17 }).inputs).toEqual([{ kind: 'node', node: 'yard/n1', is: 'up' }])
    expect(story.say(start + 10, 'state', { s: 'ready', boot: 17 }).inputs).toEqual([])
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 4 }))
    expect(story.say(start + 20_000, 'state', { s: 'lost', boot: 17 }).inputs).toEqual([{ kind: 'node', node: 'yard/n1', is: 'lost' }])
    expect(story.node().state).toBe('lost')
    expect(story.say(start + 25_000, 'readings', pack({ seq: 2, up: 24 })).inputs[0]).toEqual({ kind: 'node', node: 'yard/n1', is: 'up' })
    expect(story.node().state).toBe('ready')
  })

  it('takes no notice of the will of an earlier boot', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ boot: 18, seq: 1, up: 4 }))
    expect(story.say(start + 1000, 'state', { s: 'lost', boot: 17 }).inputs).toEqual([])
  })

  it.each([[{ s: 'happy' }], [{}], [7], [null], [{ s: 'ready', boot: -1 }]])('%j is refused', (document) => {
    const story = new Story()
    story.say(start, 'state', document)
    expect(story.reasons()).toEqual(['bad-state'])
  })
})
