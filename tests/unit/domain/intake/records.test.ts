import { describe, expect, it } from 'vitest'
import { faultWords } from '../../../../server/contract/vocabulary.ts'
import { intakeFold } from '../../../../server/domain/intake/fold.ts'
import { Story, birth, pack, start } from './story.ts'

const one = (record: object, ...others: object[]) => [{ bn: 'yard/n1/', ...record }, ...others]

describe('what a record becomes', () => {
  it('is straightened with its cold junction, and keeps what was sent (vector of instrument facts 2.1)', () => {
    const story = new Story()
    story.say(start, 'info', birth('none'))
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 5, values: { firebox: 604.25, 'firebox/cj': 45, outlet: 31.25 } }))
    const [firebox, outlet] = story.samples()
    expect(story.samples()).toHaveLength(2)
    expect(firebox).toMatchObject({ channel: 'yard/n1/firebox', raw: 604.25, coldJunctionC: 45, quality: 'good' })
    expect(firebox?.value).toBeCloseTo(599.889, 3)
    expect(outlet).toEqual({
      kind: 'sample',
      channel: 'yard/n1/outlet',
      t: start + 5000,
      late: false,
      quality: 'good',
      raw: 31.25,
      value: 31.25,
    })
  })

  it('takes the board temperature of the same moment', () => {
    const story = new Story()
    story.say(start, 'info', birth('none'))
    const at = (t: number, c: number) => [
      { bn: 'yard/n1/', n: 'firebox', u: 'Cel', v: 600, t },
      { n: 'firebox/cj', u: 'Cel', v: c, t },
    ]
    story.say(start + 20_000, 'readings', [...at(-10, 30), ...at(-5, 35), ...at(0, 40), ...pack({ seq: 1, up: 20, values: {} })])
    expect(story.samples().map(({ coldJunctionC }) => coldJunctionC)).toEqual([30, 35, 40])
  })

  it('uses the last board temperature for ten minutes, then the assumed one, and remarks it', () => {
    const story = new Story()
    story.say(start, 'info', birth('none'))
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 5, values: { firebox: 600, 'firebox/cj': 45 } }))
    story.say(start + 600_000, 'readings', pack({ seq: 2, up: 600, values: { firebox: 600 } }))
    expect(story.samples().at(-1)?.coldJunctionC).toBe(45)
    expect(story.node().remarks).toEqual([])
    story.say(start + 1_300_000, 'readings', pack({ seq: 3, up: 1300, values: { firebox: 600 } }))
    expect(story.samples().at(-1)).not.toHaveProperty('coldJunctionC')
    expect(story.node().remarks).toEqual(['cold-junction-assumed'])
  })

  it.each([...faultWords])('fault:%s takes the place of a number', (word) => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 5, values: { wall: `fault:${word}`, outlet: 31 } }))
    expect(story.samples()[0]).toMatchObject({ channel: 'yard/n1/wall', quality: `fault:${word}`, raw: null, value: null })
    expect(story.samples()[1]).toMatchObject({ quality: 'good', value: 31 })
  })

  it('doubts two numbers that the probe can not show, and calls the third a fault', () => {
    const story = new Story()
    story.say(start, 'info', birth('none'))
    for (let i = 1; i <= 3; i++) story.say(start + i * 5000, 'readings', pack({ seq: i, up: i * 5, values: { outlet: 200 } }))
    expect(story.samples().map(({ quality }) => quality)).toEqual(['suspect', 'suspect', 'fault:range'])
    story.say(start + 20_000, 'readings', pack({ seq: 4, up: 20, values: { outlet: 31 } }))
    expect(story.samples().at(-1)).toMatchObject({ quality: 'good' })
    expect(story.refused).toEqual([])
  })

  it('refuses what no register can hold, and tells the fault', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 5, values: { wall: 99_999, outlet: 31 } }))
    expect(story.refused).toEqual([{ node: 'yard/n1', reason: 'out-of-range', record: 1 }])
    expect(story.samples().map(({ quality }) => quality)).toEqual(['fault:range', 'good'])
  })

  it('refuses what is colder than any open air, counts it, and lets the rest of the pack in', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 5, values: { outlet: -400, wall: 20 } }))
    expect(story.refused).toEqual([{ node: 'yard/n1', reason: 'out-of-range', record: 1 }])
    expect(story.samples().map(({ quality, value }) => [quality, value])).toEqual([
      ['fault:range', null],
      ['good', 20],
    ])
  })

  it('takes another unit than °C as the birth document has it', () => {
    const story = new Story()
    const channels = [
      { n: 'co', u: 'ppm', sensor: 'co', period: 150, lsb: 1 },
      { n: 'wall', u: 'V', sensor: 'K', converter: 'ads1220', cj: 'board', period: 5 },
      { n: 'board', u: 'Cel', period: 5 },
    ]
    story.say(start, 'info', birth('none', { channels }))
    story.say(start + 5000, 'readings', [
      { bn: 'yard/n1/', bver: 26, n: 'co', u: 'ppm', v: 50 },
      { n: 'wall', u: 'mV', v: 12.209 - 1.203 },
      { n: 'board', u: 'Cel', v: 30 },
    ])
    expect(story.refused).toEqual([])
    expect(story.samples()).toMatchObject([{ value: 50 }, { coldJunctionC: 30 }, { channel: 'yard/n1/board', value: 30 }])
    expect(story.samples()[1]?.value).toBeCloseTo(300, 0) // E(300) = 12.209 mV, E(30) = 1.203 mV: NIST, type K
    expect(story.inputs[0]).toMatchObject({ channel: 'yard/n1/co', periodS: 150 })
  })
})

describe('what is refused, by reason (wire format, rule 9)', () => {
  const inform = { channels: [{ n: 'wall', u: 'Cel', sensor: 'K', converter: 'max31856', linearised: true, period: 5 }] }
  it.each([
    ['a base name of another node', one({ bn: 'yard/n2/', n: 'wall', u: 'Cel', v: 1 }), 'foreign-name'],
    ['a base name of another thing', one({ bn: 'urn:dev:mac:0024befffe804ff1:', n: 'wall', u: 'Cel', v: 1 }), 'foreign-name'],
    ['a channel name too long', one({ n: 'w'.repeat(65), u: 'Cel', v: 1 }), 'unknown-name'],
    ['a colon in a channel name', one({ n: 'a:b', u: 'Cel', v: 1 }), 'unknown-name'],
    ['no unit, and no birth document that has one', one({ n: 'core', v: 1 }), 'no-unit'],
    ['a unit that no registry knows', one({ n: 'wall', u: 'degF', v: 100 }), 'unknown-unit'],
    ['a secondary unit in a pack of version 10', one({ n: 'co', u: 'ppm', v: 50 }), 'unit-version'],
    ['another unit than was announced', one({ n: 'wall', u: 'K', v: 300 }), 'wrong-unit'],
    ['a text that is no fault', one({ n: 'wall', vs: 'hot' }), 'no-number'],
    ['a fault that is not known', one({ n: 'wall', vs: 'fault:melted' }), 'unknown-fault'],
    ['a year that can not be', one({ n: 'wall', u: 'Cel', v: 1, t: 1_500_000_000 }), 'bad-time'],
  ])('%s', (_, records, reason) => {
    const story = new Story()
    story.say(start, 'info', birth('none', inform))
    story.say(start + 5000, 'readings', [...records, { bn: 'yard/n1/', n: 'outlet', u: 'Cel', v: 31 }])
    expect(story.refused).toEqual([{ node: 'yard/n1', reason, record: 0 }])
    expect(story.samples()).toMatchObject([{ channel: 'yard/n1/outlet', value: 31 }])
    expect(story.node().refused).toEqual({ [reason]: 1 })
  })

  it.each([
    ['no JSON', new TextEncoder().encode('outlet=31'), 'bad-json'],
    ['ill-formed UTF-8', Uint8Array.of(0x5b, 0xff, 0x5d), 'bad-utf8'],
    ['a text', 'hello', 'not-a-pack'],
    ['a number', 31, 'not-a-pack'],
    ['an empty pack', [], 'empty-pack'],
    ['an empty object', {}, 'empty-pack'],
    ['a version that is not understood', [{ bver: 42, n: 'yard/n1/wall', u: 'Cel', v: 1 }], 'unknown-version'],
  ])('%s is refused whole', (_, payload, reason) => {
    const story = new Story()
    story.say(start, 'readings', payload)
    expect(story.refused).toEqual([{ node: 'yard/n1', reason, record: null }])
    expect(story.inputs).toEqual([])
  })

  it('takes a URN that the node announced for its own name', () => {
    const story = new Story()
    story.say(start, 'info', birth('none', { urn: 'urn:dev:mac:0024befffe804ff1' }))
    story.say(start + 5000, 'readings', [{ bn: 'urn:dev:mac:0024befffe804ff1:', n: 'outlet', u: 'Cel', v: 31 }])
    expect(story.samples()).toMatchObject([{ channel: 'yard/n1/outlet', value: 31 }])
  })

  it('knows 64 channels of a node and no more', () => {
    const story = new Story()
    story.say(
      start,
      'readings',
      Array.from({ length: 70 }, (_, i) => ({ n: `yard/n1/c${i}`, u: 'Cel', v: 30 })),
    )
    expect(story.samples()).toHaveLength(64)
    expect(new Set(story.reasons())).toEqual(new Set(['too-many-channels']))
  })

  it('changes nothing but counters for a message that is refused whole', () => {
    const story = new Story()
    story.say(start, 'info', birth('none'))
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 5 }))
    const strip = () => {
      const thawed = intakeFold.thaw(intakeFold.freeze(story.state))
      for (const node of thawed.nodes.values()) node.refused = {}
      return thawed
    }
    const before = strip()
    for (const payload of [new TextEncoder().encode('['), [], 7, [{ bver: 42 }], [{ bn: 'yard/n2/', n: 'x', u: 'Cel', v: 1 }]]) {
      story.say(start + 6000, 'readings', payload)
    }
    expect(story.refused).toHaveLength(5)
    expect(strip()).toEqual(before)
  })
})

describe('hand-made firmware (wire format, rule 10)', () => {
  it('may send a bare object: °C, at reception, unsequenced', () => {
    const story = new Story()
    story.say(start, 'readings', { outlet: 31.2, wall: 352 })
    story.say(start + 1000, 'readings', { outlet: 31.2, wall: 352 })
    expect(story.samples().map(({ channel, t, value, late }) => [channel, t - start, value, late])).toEqual([
      ['yard/n1/outlet', 0, 31.2, false],
      ['yard/n1/wall', 0, 352, false],
      ['yard/n1/outlet', 1000, 31.2, false],
      ['yard/n1/wall', 1000, 352, false],
    ])
    expect(story.node()).toMatchObject({ remarks: ['unsequenced'], duplicates: 0, boot: null })
  })

  it('keeps what is a number beside what is not', () => {
    const story = new Story()
    story.say(start, 'readings', { outlet: 31.2, wall: 'hot', smoke: null, core: [1] })
    expect(story.samples()).toMatchObject([{ channel: 'yard/n1/outlet' }])
    expect(story.reasons().sort()).toEqual(['bad-number', 'nested', 'no-number'])
  })

  it('is taken on `readings` only', () => {
    const story = new Story()
    story.say(start, 'backlog', { outlet: 31.2 })
    expect(story.reasons()).toEqual(['not-a-pack'])
  })
})

describe('retained readings (wire format, rule 6)', () => {
  it('are no samples, and are remarked once', () => {
    const story = new Story()
    const result = story.say(start, 'readings', pack({ seq: 1, up: 5 }), { retained: true })
    story.say(start, 'backlog', pack({ seq: 2, up: 5 }), { retained: true })
    expect(result.inputs).toEqual([])
    expect(story.node()).toMatchObject({ samples: 0, lastHeard: null, remarks: ['retained-reading'] })
  })
})

describe('period and step', () => {
  it('come with the first pack where no birth document told them: 5 s and a quarter degree', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 5 }))
    expect(story.inputs).toContainEqual({ kind: 'channel', channel: 'yard/n1/outlet', periodS: 5, lsb: 0.25 })
  })

  it('are told again when the birth document comes after the first pack', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 5 }))
    expect(story.say(start + 1000, 'info', birth('none')).inputs[1]).toMatchObject({ channel: 'yard/n1/outlet', periodS: 5, lsb: 0.0625 })
  })

  it('follow `ut`, and are told as they change', () => {
    const story = new Story()
    for (const [seq, ut] of [
      [1, 10],
      [2, 10],
      [3, 30],
    ] as const) {
      story.say(start + seq * 10_000, 'readings', pack({ seq, up: seq * 10, ut }))
    }
    expect(story.inputs.filter(({ kind }) => kind === 'channel')).toMatchObject([{ periodS: 10 }, { periodS: 30 }])
  })
})

describe('checkpoints', () => {
  it('come back as they were, and go on the same', () => {
    const whole = new Story()
    const parted = new Story()
    for (const story of [whole, parted]) {
      story.say(start, 'info', birth('ntp'))
      for (let i = 1; i <= 30; i++)
        story.say(start + i * 5000, 'readings', pack({ seq: i, up: i * 5, values: { firebox: 500 + i, 'firebox/cj': 40 } }))
      story.say(start + 151_000, 'backlog', pack({ boot: 3, seq: 8, up: 77 }))
    }
    const bytes = intakeFold.freeze(parted.state)
    parted.state = intakeFold.thaw(bytes)
    expect(Buffer.compare(intakeFold.freeze(parted.state), bytes)).toBe(0)
    for (const story of [whole, parted]) for (let i = 25; i <= 60; i++) story.say(start + i * 5000, 'readings', pack({ seq: i, up: i * 5 }))
    expect(parted.inputs).toEqual(whole.inputs)
    expect(parted.refused).toEqual(whole.refused)
  })

  it('are not made of damaged bytes', () => {
    expect(() => intakeFold.thaw(Uint8Array.of(0xff))).toThrow(RangeError)
  })
})
