import { describe, expect, it } from 'vitest'
import { intakeFold } from '../../../../server/domain/intake/fold.ts'
import { nothingSeen, printOf, rememberPack, sightPack, sightSample } from '../../../../server/domain/intake/identity.ts'
import { Story, pack, start } from './story.ts'

describe('identity (wire format, rule 1)', () => {
  it('stores once what comes twice, and counts it', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 4, values: { outlet: 31.25, wall: 40 } }))
    const again = story.say(start + 300, 'readings', pack({ seq: 1, up: 4, values: { outlet: 31.25, wall: 40 } }))
    expect(again.inputs).toEqual([])
    expect(again.refused).toEqual([])
    expect(story.node()).toMatchObject({ samples: 2, duplicates: 2, conflicts: 0 })
  })

  it('knows the same samples under another pack number (an overlapping buffer)', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 4 }))
    story.say(start + 5000, 'backlog', pack({ seq: 2, up: 9, t: -5 }))
    expect(story.samples()).toHaveLength(1)
    expect(story.node().duplicates).toBe(1)
  })

  it('knows a pack that was written otherwise but says the same', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 4 }))
    story.say(
      start + 10,
      'readings',
      [...pack({ seq: 1, up: 4 })].reverse().map((record) => ('bn' in record ? record : { bn: 'yard/n1/', u: 'Cel', ...record })),
    )
    expect(story.samples()).toHaveLength(1)
    expect(story.node()).toMatchObject({ duplicates: 1, conflicts: 0 })
  })

  it('lets the first stay when the second says otherwise', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 4, values: { outlet: 31.25 } }))
    const second = story.say(start + 100, 'readings', pack({ seq: 1, up: 4, values: { outlet: 88 } }))
    expect(second.inputs).toEqual([])
    expect(second.refused).toEqual([{ node: 'yard/n1', reason: 'conflict', record: 1 }])
    expect(story.node()).toMatchObject({ conflicts: 1, refused: { conflict: 1 } })
  })

  it('finds a conflict of samples under another pack number, and keeps what is new in that pack', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 4, values: { outlet: 31.25 } }))
    story.say(start + 100, 'readings', pack({ seq: 2, up: 4, values: { outlet: 88, wall: 40 } }))
    expect(story.samples().map(({ channel, raw }) => [channel, raw])).toEqual([
      ['yard/n1/outlet', 31.25],
      ['yard/n1/wall', 40],
    ])
    expect(story.reasons()).toEqual(['conflict'])
  })

  it('asks for a new boot number after three conflicts, and again only after twice as many', () => {
    const story = new Story()
    for (let seq = 1; seq <= 20; seq++) story.say(start + seq * 5000, 'readings', pack({ seq, up: seq * 5 }))
    const asked: number[] = []
    // The node started again and counts from 1 under the old boot number.
    for (let seq = 1; seq <= 13; seq++) {
      const { commands } = story.say(start + 200_000 + seq * 5000, 'readings', pack({ seq, up: seq * 5 + 1, values: { outlet: 40 + seq } }))
      if (commands.length > 0) asked.push(seq)
      if (seq === 3) expect(commands).toEqual([{ node: 'yard/n1', do: 'rebirth', why: 'conflicts' }])
    }
    expect(asked).toEqual([3, 6, 12])
    expect(story.samples()).toHaveLength(20)
  })

  it('starts counting conflicts anew with a new boot', () => {
    const story = new Story()
    story.say(start, 'readings', pack({ seq: 1, up: 4 }))
    for (const value of [50, 60]) story.say(start + value, 'readings', pack({ seq: 1, up: 4, values: { outlet: value } }))
    story.say(start + 5000, 'readings', pack({ boot: 18, seq: 1, up: 1 }))
    story.say(start + 5100, 'readings', pack({ boot: 18, seq: 1, up: 1, values: { outlet: 77 } }))
    expect(story.commands).toEqual([])
    expect(story.node().conflicts).toBe(3)
  })

  it.each([
    ['a boot that is no number', [{ n: 'boot', vs: 'first' }]],
    ['a boot over 32 bit', [{ n: 'boot', v: 4_294_967_296 }]],
    ['a broken pack number', [{ n: 'seq', v: 1.5 }]],
    ['seconds since start below 0', [{ n: 'up', v: -1 }]],
  ])('%s makes the pack useless', (_, identity) => {
    const story = new Story()
    story.say(start, 'readings', [{ bn: 'yard/n1/', n: 'outlet', u: 'Cel', v: 31 }, ...identity])
    expect(story.reasons()).toEqual(['bad-identity'])
    expect(story.samples()).toEqual([])
  })
})

describe('a pack that says only who it is from', () => {
  it('is a sign of life, once', () => {
    const story = new Story()
    expect(story.say(start, 'readings', pack({ seq: 1, up: 4, values: {} })).inputs).toEqual([{ kind: 'node', node: 'yard/n1', is: 'up' }])
    story.say(start + 20_000, 'readings', pack({ seq: 1, up: 4, values: {} }))
    expect(story.node()).toMatchObject({ lastHeard: start, boot: 17, samples: 0 })
  })
})

describe('memory of one boot', () => {
  it('remembers pack numbers as ranges, in whatever order they come', () => {
    const seen = nothingSeen()
    const order = [5, 1, 3, 2, 9, 4, 7, 8, 6]
    for (const seq of order) {
      expect(sightPack(seen, seq, 1)).toBe('new')
      rememberPack(seen, seq, 1)
    }
    expect(seen.packRanges).toEqual([[1, 9]])
    for (const seq of order) expect(sightPack(seen, seq, 1)).toBe('again')
    expect(sightPack(seen, 3, 2)).toBe('changed')
    expect(sightPack(seen, 10, 1)).toBe('new')
  })

  it('stays bounded over a long boot, and still knows that an old pack was heard', () => {
    const seen = nothingSeen()
    for (let seq = 1; seq <= 30_000; seq++) {
      rememberPack(seen, seq, seq)
      sightSample(seen, 'wall', seq * 5000, seq)
    }
    expect(seen.packPrints.size).toBe(8192)
    expect(seen.samples.get('wall')?.size).toBe(4096)
    expect(seen.packRanges).toEqual([[1, 30_000]])
    expect(sightPack(seen, 1, 1)).toBe('forgotten')
  })

  it('shares its room among the channels, and never leaves one with less than 256', () => {
    const seen = nothingSeen()
    for (let i = 0; i < 3000; i++) for (let channel = 0; channel < 64; channel++) sightSample(seen, `c${channel}`, i, i)
    const sizes = [...seen.samples.values()].map(({ size }) => size)
    expect(Math.max(...sizes)).toBe(512)
    for (let i = 0; i < 3000; i++) for (let channel = 0; channel < 200; channel++) sightSample(seen, `d${channel}`, i, i)
    expect(seen.samples.get('d199')?.size).toBe(256)
  })

  it('keeps the newest ranges of a sender that skips', () => {
    const seen = nothingSeen()
    for (let seq = 1; seq <= 2000; seq += 2) rememberPack(seen, seq, seq)
    expect(seen.packRanges).toHaveLength(256)
    expect(seen.packRanges.at(-1)).toEqual([1999, 1999])
  })

  it('refuses a forgotten pack number on live packs (a counter that began again) and takes it for a duplicate in a buffer', () => {
    const story = new Story()
    for (let seq = 1; seq <= 8300; seq++) story.say(start + seq * 1000, 'readings', pack({ seq, up: seq }))
    const late = start + 8301 * 1000
    expect(story.say(late, 'readings', pack({ seq: 5, up: 5.5, values: { outlet: 99 } })).refused).toMatchObject([{ reason: 'conflict' }])
    expect(story.say(late, 'backlog', pack({ seq: 6, up: 6 }))).toMatchObject({ inputs: [], refused: [] })
    expect(intakeFold.freeze(story.state).length).toBeLessThan(400_000)
  })

  it('prints FNV-1a (published values: empty 811c9dc5, "a" e40c292c, "foobar" bf9cf968)', () => {
    const print = (text: string) => printOf(new TextEncoder().encode(text)).toString(16)
    expect(print('')).toBe('811c9dc5')
    expect(print('a')).toBe('e40c292c')
    expect(print('foobar')).toBe('bf9cf968')
  })
})
