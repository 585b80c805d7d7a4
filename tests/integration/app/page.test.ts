import { expect, test } from 'vitest'
import { openBrowser } from '../../support/browser.ts'
import { driveApp, post } from '../../support/driven-app.ts'

const start = Date.UTC(2026, 6, 1, 6, 0, 5)

test('the page as the service serves it: no violation of its own policy, nothing fetched from outside, a reading shown, the demo under its own address', async () => {
  const live = await driveApp({ at: start })
  const browser = await openBrowser()
  try {
    const page = await browser.newPage()
    const troubles: string[] = []
    const foreign: string[] = []
    page.on('console', (message) => void (message.type() === 'error' && troubles.push(message.text())))
    page.on('pageerror', (problem) => troubles.push(problem.message))
    page.on('request', (asked) => void (!asked.url().startsWith(live.url) && !asked.url().startsWith('data:') && foreign.push(asked.url())))
    await page.goto(`${live.url}/`)
    live.clock.moveTo(start + 5000)
    const pack = (seq: number) => [
      { bn: 'yard/n1/', bu: 'Cel', n: 'wall', v: 87.25, t: 0 },
      { n: 'firebox', v: 412 },
      { n: 'outlet', v: 31 },
      { n: 'boot', u: 'count', v: 1 },
      { n: 'seq', u: 'count', v: seq },
      { n: 'up', u: 's', v: seq },
    ]
    for (let seq = 1; seq < 4; seq++) {
      live.clock.moveTo(start + 5000 + seq * 1000)
      await live.publish('readings', pack(seq))
    }
    await expect.poll(() => page.locator('body').innerText()).toMatch(/412/)

    expect((await post(`${live.url}/api/demo`, { speed: 600 })).status).toBe(200)
    await page.goto(`${live.url}/demo/`)
    await expect.poll(async () => (await page.locator('body').innerText()).length).toBeGreaterThan(100)
    expect(troubles).toEqual([])
    expect(foreign).toEqual([])
  } finally {
    await browser.close()
    await live.client.endAsync(true)
    await live.app.stop()
  }
})
