import { describe, expect, it } from 'vitest'
import type { IntakeResult } from '../../../../../server/domain/intake/types.ts'
import { Story, birth, samplesOf } from '../story.ts'
import { nowS } from './case.ts'
import { bare, numbers, shapes, texts } from './json.ts'
import { identities, times, units, values } from './meaning.ts'
import { labels, names, types } from './senml.ts'

const cases = [numbers, texts, shapes, bare, types, names, labels, values, units, times, identities].flatMap((group) => group())
const at = nowS * 1000
const channels = [
  { n: 'outlet', u: 'Cel', sensor: 'ds18b20', linearised: true, period: 5 },
  { n: 'probe', u: 'Cel', sensor: 'K', converter: 'max31856', linearised: true, period: 5 },
  { n: 'co', u: 'ppm', sensor: 'co', period: 150 },
]

function told({ inputs, refused }: Pick<IntakeResult<unknown>, 'inputs' | 'refused'>): string {
  const samples = samplesOf(inputs).map(({ channel, t, quality, value }) => {
    const what = quality === 'good' ? String(value) : quality === 'suspect' ? `${String(value)}?` : quality
    return `${channel.replace('yard/n1/', '')}=${what.replace(/(\.\d*?)0{6,}\d*$/, '$1').replace(/\.$/, '')}${t === at ? '' : `@${(t - at) / 1000}s`}`
  })
  const counted = samples.length > 9 ? [`${samples.length} samples`] : samples
  return [
    ...counted,
    ...refused
      .toSorted((a, b) => (a.record ?? 0) - (b.record ?? 0))
      .map(({ reason, record }) => (record === null ? `!${reason}` : `!${reason}#${record}`)),
  ].join(' ')
}

const groups = [...new Set(cases.map(({ rule }) => rule.split(' [')[0] ?? ''))].toSorted((a, b) => Number(a.slice(6)) - Number(b.slice(6)))
describe.each(groups)('bad input, %s', (group) => {
  it.each(cases.filter(({ rule }) => rule.startsWith(`${group} [`)).map((one) => [one.what.slice(0, 90), one.rule, one] as const))(
    '%s, %s',
    (_what, _rule, { payload, outcome }) => {
      const story = new Story()
      story.say(at - 60_000, 'info', birth('none', { channels }))
      const bytes = typeof payload === 'string' ? new TextEncoder().encode(payload) : payload
      expect(told(story.say(at, 'readings', bytes))).toBe(outcome)
      // whatever it was, the next good message is taken in
      expect(samplesOf(story.say(at + 5000, 'readings', { core: 40 }).inputs)).toMatchObject([{ channel: 'yard/n1/core', value: 40 }])
    },
  )
})

it('are more than 300, and no two of them alike', () => {
  expect(cases.length).toBeGreaterThan(300)
  expect(new Set(cases.map(({ payload }) => String(payload))).size).toBe(cases.length)
})
