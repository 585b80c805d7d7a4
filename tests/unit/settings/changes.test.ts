import { expect, it } from 'vitest'
import { changesOf } from '../../../server/settings/changes.ts'

it('names every plain value that differs, by its path', () => {
  const before = { port: 1, kilns: [{ name: '', roles: { 'yard/n1/a': 'wall' } }] }
  const after = {
    port: 1,
    kilns: [
      { name: 'Upper', roles: { 'yard/n1/b': 'wall' } },
      { name: 'Lower', roles: {} },
    ],
  }
  expect(changesOf(before, after)).toEqual([
    { path: 'kilns.0.name', from: '', to: 'Upper' },
    { path: 'kilns.0.roles.yard/n1/a', from: 'wall', to: null },
    { path: 'kilns.0.roles.yard/n1/b', from: null, to: 'wall' },
    { path: 'kilns.1.name', from: null, to: 'Lower' },
  ])
  expect(changesOf(after, after)).toEqual([])
})
