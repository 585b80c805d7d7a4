import { describe, expect, it } from 'vitest'
import { epochMs, feedEpoch, noEpoch } from '../../../../server/domain/intake/clock.ts'
import { Story, birth, pack, samplesOf, start } from './story.ts'

describe('a node without a clock (wire format, rule 2)', () => {
  it('places samples by the least delayed pack', () => {
    const story = new Story()
    // Born at `start`; packs come 700, 100 and 400 ms after they were composed.
    for (const [seq, up, delay] of [
      [1, 5, 700],
      [2, 10, 100],
      [3, 15, 400],
    ] as const) {
      story.say(start + up * 1000 + delay, 'readings', pack({ seq, up, t: -1 }))
    }
    expect(story.samples().map(({ t }) => t - start)).toEqual([4700, 9100, 14_100])
  })

  it('places a pack that waited for the network where it belongs, and calls it late', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 5 }))
    story.say(start + 600_000, 'readings', pack({ seq: 2, up: 10 }))
    expect(story.samples()).toMatchObject([
      { t: start + 5000, late: false },
      { t: start + 10_000, late: true },
    ])
  })

  it('never lets a buffer move the estimate', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 5 }))
    // A buffer with a wrong `up` would pull the epoch back by 50 s.
    story.say(start + 10_000, 'backlog', pack({ seq: 2, up: 60 }))
    story.say(start + 15_100, 'readings', pack({ seq: 3, up: 15 }))
    expect(story.samples().at(-1)?.t).toBe(start + 15_000)
  })

  it('forgets the least of more than an hour ago, so that a drifting crystal is followed', () => {
    const epoch = noEpoch()
    for (let s = 0; s <= 7200; s += 5) feedEpoch(epoch, start + s * 1000 + s / 20, s) // 50 ppm slow
    expect((epochMs(epoch) ?? 0) - start).toBeGreaterThanOrEqual(3500 / 20)
    expect(epoch.minutes.length).toBeLessThanOrEqual(61)
  })

  it('is overruled by six packs in a row that agree: one broken `up` does not make an hour of readings late', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 5 }))
    story.say(start + 10_000, 'readings', pack({ seq: 2, up: 1000 }))
    for (let i = 3; i <= 12; i++) story.say(start + i * 5000 + i * 10, 'readings', pack({ seq: i, up: i * 5 }))
    expect(story.samples().map(({ late }) => late)).toEqual([false, false, true, true, true, true, true, false, false, false, false, false])
    expect(story.samples().at(-1)?.t).toBe(start + 60_000 + 30)
  })

  it('is not overruled by what a slow network held back', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 5 }))
    for (let i = 2; i <= 30; i++) story.say(start + 200_000 + i, 'readings', pack({ seq: i, up: i * 5 }))
    expect(story.samples().map(({ t }) => t - start)).toEqual(Array.from({ length: 30 }, (_, i) => (i + 1) * 5000))
  })

  it('gives nothing a time after it was heard', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 5, t: 1.5 }))
    expect(story.samples()[0]?.t).toBe(start + 5000)
  })
})

// Instrument facts 5.2, vectors of the relative rule: received at 2025-11-25T06:00:00Z, here without boot, so against reception.
describe('relative and absolute times (RFC 8428, 4.5.3)', () => {
  const received = 1_764_050_400_000
  const sent = (record: object) => {
    const story = new Story()
    story.say(received, 'readings', [{ n: 'yard/n1/outlet', u: 'Cel', v: 31, ...record }])
    return story
  }
  it.each([
    [{}, 1_764_050_400],
    [{ t: -12.5 }, 1_764_050_387.5],
    [{ bt: -60, t: -5 }, 1_764_050_335],
    [{ bt: 1_764_050_399, t: 0.5 }, 1_764_050_399.5],
  ])('%j is %d', (record, expectedS) => {
    expect(sent(record).samples()[0]?.t).toBe(expectedS * 1000)
  })

  it.each([
    ['8.5 years ahead', { bt: 268_435_455, t: 0 }],
    ['1978, once the sum crossed 2^28', { bt: 268_435_455, t: 1 }],
    ['2019', { t: Date.UTC(2019, 11, 31) / 1000 }],
    ['2100', { t: Date.UTC(2100, 0, 1) / 1000 }],
    ['more than a month ago', { t: -40 * 86_400 }],
  ])('%s can not be meant', (_, record) => {
    expect(sent(record).reasons()).toEqual(['bad-time'])
  })
})

describe('a node with a clock (wire format, rule 3)', () => {
  const absolute = (seq: number, up: number, atMs: number, value = 31) => pack({ seq, up, t: atMs / 1000, values: { outlet: value } })
  const told = (story: Story) => story.inputs.filter(({ kind }) => kind === 'health')

  it('is believed while it agrees', () => {
    const story = new Story()
    story.say(start, 'info', birth('ntp'))
    for (let i = 1; i <= 5; i++) story.say(start + i * 5000 + 300, 'readings', absolute(i, i * 5, start + i * 5000))
    expect(story.samples().map(({ t }) => t - start)).toEqual([5000, 10_000, 15_000, 20_000, 25_000])
    expect(told(story)).toEqual([])
    expect(story.node().clock).toBe('ntp')
  })

  it.each([
    ['six seconds behind', -6000],
    ['three seconds ahead', 3000],
    ['a day ahead', 86_400_000],
  ])('%s: suspect, told once, placed by its seconds since start', (_, off) => {
    const story = new Story()
    for (let i = 1; i <= 4; i++) story.say(start + i * 5000, 'readings', absolute(i, i * 5, start + i * 5000 + off))
    expect(told(story)).toEqual([{ kind: 'health', code: 'clock-suspect', on: true }])
    expect(story.samples().map(({ t }) => t - start)).toEqual([5000, 10_000, 15_000, 20_000])
    expect(story.node().clock).toBe('suspect')
  })

  it('is suspect when it steps back while its seconds grow, and believed again after three good packs', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', absolute(1, 5, start + 5000))
    story.say(start + 6000, 'readings', absolute(2, 6, start + 3000))
    expect(told(story)).toEqual([{ kind: 'health', code: 'clock-suspect', on: true }])
    for (let i = 3; i <= 4; i++) story.say(start + 5000 * i, 'readings', absolute(i, 5 * i, start + 5000 * i))
    expect(told(story)).toHaveLength(1)
    story.say(start + 25_000, 'readings', absolute(5, 25, start + 25_000))
    expect(told(story)).toEqual([
      { kind: 'health', code: 'clock-suspect', on: true },
      { kind: 'health', code: 'clock-suspect', on: false },
    ])
  })

  it('is not blamed for a network that was slow', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', absolute(1, 5, start + 5000))
    story.say(start + 70_000, 'readings', absolute(2, 10, start + 10_000))
    expect(told(story)).toEqual([])
    expect(story.samples().at(-1)).toMatchObject({ t: start + 10_000, late: true })
  })

  it('is not blamed for a broken `up` either', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', absolute(1, 5, start + 5000))
    story.say(start + 10_000, 'readings', absolute(2, 1000, start + 10_000))
    story.say(start + 15_000, 'readings', absolute(3, 15, start + 15_000))
    expect(told(story)).toEqual([])
    expect(story.samples().map(({ t, late }) => [t - start, late])).toEqual([
      [5000, false],
      [10_000, false],
      [15_000, false],
    ])
  })

  it('whose buffer lies in the future is placed by its seconds', () => {
    const story = new Story()
    story.say(start + 100_000, 'readings', absolute(9, 100, start + 100_000))
    story.say(start + 101_000, 'backlog', absolute(3, 50, start + 3_600_000))
    expect(story.samples().at(-1)).toMatchObject({ t: start + 50_000, late: true })
  })

  it('that counts its seconds from 1970 is taken for one without', () => {
    const story = new Story()
    for (let i = 1; i <= 3; i++) story.say(start + i * 5000, 'readings', pack({ seq: i, up: i * 5, t: i * 5 }))
    expect(story.samples().map(({ t }) => t - start)).toEqual([5000, 10_000, 15_000])
    expect(story.node()).toMatchObject({ clock: 'suspect', remarks: ['time-ahead'] })
    const two = [20, 17].map((t) => ({ bn: 'yard/n1/', n: 'outlet', u: 'Cel', v: t, t }))
    story.say(start + 20_000, 'readings', [...two, ...pack({ seq: 4, up: 20, values: {} })])
    expect(
      story
        .samples()
        .slice(3)
        .map(({ t }) => t - start),
    ).toEqual([20_000, 17_000])
  })
})

describe('lateness (wire format, rule 5)', () => {
  it.each([
    [undefined, 15_000],
    [5, 15_000],
    [20, 60_000],
  ])('a period of %d s: not late at %d ms, late after', (ut, limitMs) => {
    const story = new Story()
    const spec = { ...(ut === undefined ? {} : { ut }) }
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 5, ...spec }))
    story.say(start + 500_000, 'readings', pack({ seq: 2, up: 500, t: -limitMs / 1000, ...spec }))
    story.say(start + 505_000, 'readings', pack({ seq: 3, up: 505, t: -limitMs / 1000 - 0.001, ...spec }))
    expect(story.samples().map(({ late }) => late)).toEqual([false, false, true])
  })

  it('is what a buffer is, however fresh', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', pack({ seq: 1, up: 5 }))
    story.say(start + 6000, 'backlog', pack({ seq: 2, up: 6 }))
    expect(story.samples().map(({ late }) => late)).toEqual([false, true])
  })
})

describe('a boot whose buffer arrives after the next start (wire format, rule 4)', () => {
  it('is placed by its own beginning where that is known', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', pack({ boot: 17, seq: 1, up: 5 }))
    story.say(start + 60_000, 'readings', pack({ boot: 18, seq: 1, up: 3 }))
    story.say(start + 61_000, 'backlog', pack({ boot: 17, seq: 2, up: 10 }))
    expect(story.samples().at(-1)).toMatchObject({ t: start + 10_000, late: true, quality: 'good' })
  })

  it('keeps its spacing, lies before the new start, and is uncertain where it is not', () => {
    const story = new Story()
    story.say(start + 60_000, 'readings', pack({ boot: 18, seq: 1, up: 3 }))
    for (let i = 0; i < 4; i++) story.say(start + 61_000 + i, 'backlog', pack({ boot: 17, seq: 90 + i, up: 500 + 5 * i }))
    expect(samplesOf(story.inputs)).toHaveLength(1)
    // Nothing more of it for half a minute: now it is placed.
    story.say(start + 95_000, 'readings', pack({ boot: 18, seq: 2, up: 38 }))
    const old = story.samples().filter(({ late }) => late)
    expect(old.map(({ t }) => t - (old[0]?.t ?? 0))).toEqual([0, 5000, 10_000, 15_000])
    expect(old.at(-1)?.t).toBe(start + 60_000 - 1)
    expect(new Set(old.map(({ quality }) => quality))).toEqual(new Set(['suspect']))
    expect(story.node().remarks).toEqual(['time-unsure'])
  })

  it('lies before what the new boot itself sent late', () => {
    const story = new Story()
    story.say(start + 60_000, 'readings', pack({ boot: 18, seq: 9, up: 33 }))
    story.say(start + 61_000, 'backlog', pack({ boot: 18, seq: 1, up: 3 }))
    story.say(start + 62_000, 'backlog', pack({ boot: 17, seq: 90, up: 500 }))
    story.say(start + 95_000, 'readings', pack({ boot: 18, seq: 10, up: 68 }))
    expect(story.samples().find(({ quality }) => quality === 'suspect')?.t).toBe(start + 30_000 - 1)
  })

  it('does not become the running boot again with a live pack that was late', () => {
    const story = new Story()
    story.say(start + 5000, 'readings', pack({ boot: 17, seq: 1, up: 5 }))
    story.say(start + 20_000, 'readings', pack({ boot: 18, seq: 1, up: 2 }))
    story.say(start + 21_000, 'readings', pack({ boot: 17, seq: 2, up: 10 }))
    expect(story.node().boot).toBe(18)
    expect(story.samples().at(-1)?.t).toBe(start + 10_000)
  })

  it('of the running boot waits for its first live pack', () => {
    const story = new Story()
    story.say(start + 100_000, 'backlog', pack({ seq: 1, up: 50 }))
    expect(story.samples()).toEqual([])
    story.say(start + 105_000, 'readings', pack({ seq: 12, up: 105 }))
    expect(story.samples().map(({ t, quality }) => [t - start, quality])).toEqual([
      [105_000, 'good'],
      [50_000, 'good'],
    ])
  })

  it('is not lost where the service itself has no clock yet', () => {
    const story = new Story()
    story.say(100_000, 'backlog', pack({ seq: 1, up: 50 }))
    story.say(105_000, 'readings', pack({ seq: 12, up: 90 }))
    expect(story.samples().map(({ t }) => t)).toEqual([105_000, 65_000])
  })

  it('is not waited for without end', () => {
    const story = new Story()
    story.say(start + 100_000, 'backlog', pack({ seq: 1, up: 50 }))
    story.say(start + 100_100, 'backlog', pack({ seq: 2, up: 55 }))
    story.say(start + 230_000, 'state', { s: 'ready' }, { node: 'n2' })
    expect(story.samples().map(({ t, quality }) => [t - start, quality])).toEqual([
      [95_100, 'suspect'],
      [100_100, 'suspect'],
    ])
  })
})
