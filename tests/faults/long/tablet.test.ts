import { setTimeout as pause } from 'node:timers/promises'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { openBrowser } from '../../support/browser.ts'
import { driveApp, post } from '../../support/driven-app.ts'
import { listeningBuzzer } from '../../support/listening-buzzer.ts'

// F34 of the handbook's table (reliability, 8): what a page misses while its process stands still, the buzzer says.

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

async function pageProcesses(): Promise<number[]> {
  const session = await browser.newBrowserCDPSession()
  const { processInfo } = (await session.send('SystemInfo.getProcessInfo')) as { processInfo: { type: string; id: number }[] }
  await session.detach()
  return processInfo.filter(({ type }) => type === 'renderer').map(({ id }) => id)
}

it('the tablet falls asleep, an alarm comes: the buzzer sounds; awake again the page shows what stands and how long it was blind (F34)', async () => {
  const start = Date.UTC(2026, 5, 1, 6, 0, 5)
  const live = await driveApp({ at: start })
  const { buzzer, sound } = listeningBuzzer(live.mqttPort)
  let seq = 0
  const send = async (packs: number, coPpm: number): Promise<void> => {
    for (let n = 0; n < packs; n++) {
      live.clock.moveTo(start + ++seq * 5000)
      await live.publish('readings', [
        { bn: 'yard/n1/', bu: 'Cel', ut: 5, n: 'firebox', v: 300 + n, t: 0 },
        ...[
          { n: 'wall', v: 20 + n },
          { n: 'outlet', v: 25 },
          { n: 'co', u: '/', v: coPpm / 1e6 },
        ],
        ...[
          { n: 'boot', u: 'count', v: 1 },
          { n: 'seq', u: 'count', v: seq },
          { n: 'up', u: 's', v: seq * 5 },
        ],
      ])
    }
  }
  const page = await (await browser.newContext({ locale: 'en-GB' })).newPage()
  try {
    await post(`${live.url}/api/acts`, { id: 'lit', kiln: 'kiln-1', act: { action: 'light' } })
    await send(6, 2)
    await page.goto(live.url)
    await page.waitForSelector('[data-role="firebox"]')
    const asleep = await pageProcesses()
    expect(asleep.length).toBeGreaterThan(0)
    for (const pid of asleep) process.kill(pid, 'SIGSTOP')
    await send(6, 320)
    await expect.poll(() => sound()?.pattern).toBe(3)
    await pause(11_000) // longer than a page must be still to have been blind
    for (const pid of asleep) process.kill(pid, 'SIGCONT')
    await page.waitForSelector('text=/was blind for/')
    await page.waitForSelector('text=/[Cc]arbon monoxide/')
  } finally {
    await page.close()
    await buzzer.stop()
    await live.client.endAsync(true)
    await live.app.stop()
  }
}, 90_000)
