import { readFileSync } from 'node:fs'
import { gunzipSync } from 'node:zlib'
import { expect, it } from 'vitest'
import { demoText } from '../../../server/simulator/demo/demo-lines.ts'

const committed = gunzipSync(readFileSync(new URL('../../../server/simulator/demo/demo-firing.jsonl.gz', import.meta.url))).toString()

it('the demo firing is byte for byte what its script makes (npm run demo-firing writes it)', () => {
  expect(demoText() === committed).toBe(true)
})

it('says that it is demo data and shows the whole job once', () => {
  const lines = committed
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, unknown>)
  expect(lines[0]).toMatchObject({ recording: 1, demo: true })
  expect(String(lines[0]?.['title'])).toMatch(/demo/i)
  const actions = lines.map((line) => line['action']).filter((a): a is string => typeof a === 'string')
  const once = ['load', 'arm', 'light', 'start-collecting', 'stop-collecting', 'refine', 'seal', 'crack', 'open', 'unload']
  expect(actions.filter((a) => once.includes(a))).toEqual(once)
  for (const many of ['refuel', 'wet-condenser', 'observe', 'glass', 'swap-bottle'])
    expect(actions.filter((a) => a === many).length).toBeGreaterThan(1)
})
