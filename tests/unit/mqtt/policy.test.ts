import { describe, expect, it } from 'vitest'
import { Takeovers } from '../../../server/mqtt/gate/takeovers.ts'
import { sitePolicy } from '../../../server/mqtt/policy.ts'

const policy = sitePolicy('firing', 'yard')

describe('what a node may send', () => {
  it.each(['state', 'info', 'readings', 'backlog', 'ack'])('%s', (kind) => {
    expect(policy.publish(`firing/1/yard/n1/${kind}`, 'n1')).toEqual({
      verdict: 'take',
      reason: '',
      node: 'n1',
      share: kind === 'state' || kind === 'info',
    })
  })

  it.each([
    ['firing/1/yard/n1/cmd', 'quarantine'],
    ['firing/1/yard/n1/readings/x', 'quarantine'],
    ['firing/1/yard/n1', 'quarantine'],
    ['firing/1/yard/N1/readings', 'quarantine'],
    ['firing/1/yard/1n/readings', 'quarantine'],
    [`firing/1/yard/${'n'.repeat(33)}/readings`, 'quarantine'],
    ['firing/1/yard/__proto__/readings', 'quarantine'],
    ['firing/1/yаrd/n1/readings', 'quarantine'], // a Cyrillic letter that looks like ours
    ['firing/1/yard/../readings', 'quarantine'],
    ['firing/2/yard/n1/readings', 'quarantine'],
    ['firing/1/yard/server/state', 'close'],
    ['firing/1/yard/n2/readings', 'close'],
    ['firing/1/yard/n1/readings/', 'close'],
    ['/firing', 'close'],
    ['a//b', 'close'],
    ['$SYS/broker', 'close'],
    ['a/'.repeat(200) + 'a', 'close'],
  ])('%s: %s', (topic, verdict) => {
    expect(policy.publish(topic, 'n1').verdict).toBe(verdict)
  })
})

describe('takeovers', () => {
  it('are allowed five times a minute for one name', () => {
    const takeovers = new Takeovers(5)
    expect([0, 1, 2, 3, 4, 5].map((n) => takeovers.allow('a', n * 1000))).toEqual([true, true, true, true, true, false])
    expect(takeovers.allow('b', 5000)).toBe(true)
    expect(takeovers.allow('a', 66_000)).toBe(true)
  })
})
