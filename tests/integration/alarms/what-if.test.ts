import { readFileSync } from 'node:fs'
import { gunzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { defaultLimits } from '../../../server/contract/fold.ts'
import type { WhatIfAnswer } from '../../../server/contract/setup.ts'
import { driveApp, post } from '../../support/driven-app.ts'

/** The first hours are enough: a firing with its fire. */
const linesKept = 1200
const whole = gunzipSync(readFileSync(new URL('../../../server/simulator/demo/demo-firing.jsonl.gz', import.meta.url))).toString()
const file = Buffer.from(whole.split('\n').slice(0, linesKept).join('\n'))

test('a limit says what it would have done to a firing on the shelf, and a nonsense one is turned away', async () => {
  const live = await driveApp({ at: Date.UTC(2026, 5, 1, 6) })
  const headers = { 'content-type': 'application/octet-stream' }
  const kept = await fetch(`${live.url}/api/imports?name=demo.jsonl`, { method: 'POST', headers, body: new Uint8Array(file) })
  expect(kept.status).toBeLessThan(300)
  const { id } = (await kept.json()) as { id: string }
  const ask = (limits: object): Promise<Response> => post(`${live.url}/api/firings/${id}/what-if`, limits)
  const same = (await (await ask(defaultLimits)).json()) as WhatIfAnswer
  expect(same.would).toBe(same.alarmed)
  const strict = (await (await ask({ ...defaultLimits, fireOutC: 690 })).json()) as WhatIfAnswer
  expect(strict.alarmed).toBe(same.alarmed)
  expect(strict.would).toBeGreaterThan(strict.alarmed)
  expect((await ask({ ...defaultLimits, fireOutC: 5000 })).status).toBe(422)
  await live.client.endAsync(true)
  await live.app.stop()
})
