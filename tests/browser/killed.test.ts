import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBrowser } from '../support/browser.ts'
import { startProgram, type Program } from '../support/program.ts'

// The real service dies without a word beneath one page that is awake and one that the browser has frozen, and comes back at its address.
const data = mkdtempSync(join(tmpdir(), 'kiln-killed-'))
let browser: Browser
let service: Program

beforeAll(async () => {
  ;[browser, service] = await Promise.all([openBrowser(), startProgram(data)])
})
afterAll(async () => {
  await browser.close()
  service.child.kill('SIGTERM')
  await service.ended
  rmSync(data, { recursive: true, force: true })
})

async function opened(): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 }, hasTouch: true, locale: 'en-GB', timezoneId: 'UTC' })
  const page = await context.newPage()
  await page.goto(service.url)
  // the fire that was logged is seen at the next step of ten seconds
  await page.waitForSelector('[data-key="refuel"]')
  return page
}

test(
  'a killed service is told, what is logged meanwhile arrives once, and a frozen page says that it was blind',
  { timeout: 60_000 },
  async () => {
    const logged = async (): Promise<string[]> => {
      const [firing] = (await (await fetch(`${service.url}/api/firings`)).json()) as { id: string }[]
      const { acts } = (await (await fetch(`${service.url}/api/firings/${firing?.id}`)).json()) as { acts: { act: { action: string } }[] }
      return acts.map(({ act }) => act.action)
    }
    const lit = { id: 'lit', kiln: 'kiln-1', act: { action: 'light' }, doneAt: Date.now() - 60_000 }
    const headers = { 'content-type': 'application/json', origin: service.url }
    expect((await fetch(`${service.url}/api/acts`, { method: 'POST', headers, body: JSON.stringify(lit) })).status).toBe(200)
    const [awake, frozen] = await Promise.all([opened(), opened()])
    // headless browsers do not freeze a page by themselves: an answer that it must wait for holds its script and all its timers
    let thaw = (): void => {}
    const held = new Promise<void>((done) => (thaw = done))
    await frozen.route('**/held', (route) => held.then(() => route.fulfill({ body: '' })))
    const asked = frozen.evaluate(() => {
      const request = new XMLHttpRequest()
      request.open('GET', '/held', false)
      request.send()
    })
    const since = Date.now()

    service.child.kill('SIGKILL')
    await service.ended
    await awake.waitForSelector('text=/No word from the kiln box for \\d+ s/', { timeout: 15_000 })
    await awake.tap('[data-key="refuel"]')
    await awake.waitForSelector('text=/waits for the link/')

    service = await startProgram(data, ['--port', new URL(service.url).port])
    await expect.poll(() => awake.locator('text=/waits for the link|No word from/').count(), { timeout: 15_000 }).toBe(0)
    await expect.poll(logged).toEqual(['light', 'refuel'])
    expect(await awake.locator('h1').innerText()).toBe('Wait.')

    // frozen for longer than the ten seconds that a page must not miss
    await new Promise((done) => setTimeout(done, Math.max(0, since + 11_000 - Date.now())))
    thaw()
    await asked
    await frozen.waitForSelector('text=/This page was blind for 1 min/')
    await expect.poll(() => frozen.locator('text=/No word from|No data/').count(), { timeout: 15_000 }).toBe(0)
  },
)
