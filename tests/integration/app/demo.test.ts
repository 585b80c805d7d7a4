import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { openBrowser } from '../../support/browser.ts'
import { driveApp, getJson, post } from '../../support/driven-app.ts'

const shipped = new URL('../../../server/simulator/demo/demo-firing.jsonl.gz', import.meta.url)
const minuteMs = 60_000

test('a demo that has ended says so, and one touch plays it anew from its beginning, as often as one likes', async () => {
  // the first six minutes of the shipped one, with the loading logged in them
  const lines = gunzipSync(readFileSync(shipped)).toString().split('\n').slice(0, 40)
  const lastMs = Date.parse((JSON.parse(lines[39] ?? '') as { at: string }).at)
  const demoFolder = mkdtempSync(join(tmpdir(), 'short-demo-'))
  writeFileSync(join(demoFolder, 'demo.jsonl'), lines.join('\n') + '\n')
  const live = await driveApp({ at: 1_760_000_000_000, demoFolder })
  const browser = await openBrowser()
  const now = async () => (await getJson<{ now: number }>(`${live.url}/demo/api/health`)).now
  const firings = async () => (await getJson<object[]>(`${live.url}/demo/api/firings`)).length
  try {
    expect((await post(`${live.url}/api/demo`, { speed: 600 })).status).toBe(200)
    await expect.poll(now, { timeout: 5000 }).toBe(lastMs)
    expect(await firings()).toBe(1)
    const page = await browser.newPage()
    await page.goto(`${live.url}/demo/`)
    await page.waitForSelector('nav >> text=The demo has ended.')
    await page.click('[data-key="demo-again"]')
    await page.waitForSelector('nav >> text=The demo has ended.', { state: 'detached' })
    await page.waitForSelector('nav >> text=The demo has ended.')
    expect(await now()).toBe(lastMs)
    expect(await firings()).toBe(1)
    // at the pace of the kiln it stands at its beginning for the while of this test
    expect((await post(`${live.url}/api/demo`, { speed: 1 })).status).toBe(200)
    expect(await now()).toBeLessThan(lastMs - 5 * minuteMs)
    // what plays goes on when only its pace is chosen, and begins anew when that is asked
    expect((await post(`${live.url}/api/demo`, { speed: 600 })).status).toBe(200)
    await expect.poll(now, { timeout: 5000 }).toBeGreaterThan(lastMs - 4 * minuteMs)
    expect((await post(`${live.url}/api/demo`, { speed: 1, anew: true })).status).toBe(200)
    expect(await now()).toBeLessThan(lastMs - 5 * minuteMs)
  } finally {
    await browser.close()
    await live.client.endAsync(true)
    await live.app.stop()
  }
})
