import { expect, it } from 'vitest'
import { ProbeTrails } from '../../../server/runtime/probe-trails.ts'
import { rolesAfter } from '../../../server/runtime/roles.ts'

const sample = (t: number, value: number | null, more: object = {}) =>
  ({
    kind: 'sample',
    channel: 'yard/n1/x',
    t,
    late: false,
    quality: value === null ? 'fault:open' : 'good',
    raw: value,
    value,
    ...more,
  }) as const

it('keeps a minute and a half of good values; what was buffered is not now', () => {
  const trails = new ProbeTrails()
  for (let second = 0; second <= 200; second += 5) trails.hear(sample(second * 1000, second))
  trails.hear(sample(205_000, null))
  trails.hear(sample(100_000, 7))
  trails.hear(sample(206_000, 99, { late: true }))
  const [probe] = trails.probes()
  expect(probe).toMatchObject({ t: 205_000, value: null, quality: 'fault:open' })
  expect(probe?.trail[0]).toEqual([115_000, 115])
  expect(probe?.trail.at(-1)).toEqual([200_000, 200])
})

it('a change of the settings leaves alone what a channel took by its name', () => {
  const current = { 'yard/n1/wall': 'wall', 'yard/n1/outlet': 'outlet', 'yard/n1/odd': 'smoke' } as const
  expect(rolesAfter(current, {})).toEqual({ 'yard/n1/wall': 'wall', 'yard/n1/outlet': 'outlet' })
  expect(rolesAfter(current, { 'yard/n2/t': 'wall' })).toEqual({ 'yard/n1/outlet': 'outlet', 'yard/n2/t': 'wall' })
  expect(rolesAfter(current, { 'yard/n1/wall': 'outlet', 'yard/n1/outlet': 'wall' })).toEqual({
    'yard/n1/wall': 'outlet',
    'yard/n1/outlet': 'wall',
  })
})
