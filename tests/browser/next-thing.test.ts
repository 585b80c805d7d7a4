import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { FiringSummary } from '../../server/contract/live.ts'
import { openBrowser } from '../support/browser.ts'
import { hour, noon } from './fake/kiln.ts'
import { scenes } from './fake/scenes.ts'
import { open, overflowPx, sizes, violations, type Opened } from './open.ts'

// From any page the next thing to do is told: while a kiln burns what it asks for, after it what still waits.
let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

test('on another page the kiln still says what it wants, and one touch leads back to it', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.collecting, path: '#/plan' })
  const line = page.locator('[data-key="now-line"]')
  await line.waitFor()
  expect(await line.innerText()).toMatch(/^Collect\. Take the bottle away \d\d:\d\d to \d\d:\d\d, or when the drip turns dark\.$/)
  for (const size of ['tablet', 'phone'] as const) {
    await page.setViewportSize(sizes[size])
    expect(await overflowPx(page), size).toBe(0)
    expect(await violations(page), size).toEqual([])
  }
  fake.part('command', scenes['drip-turning'].command)
  await expect.poll(() => line.innerText()).toMatch(/^Stop now\./)
  await line.tap()
  await page.waitForSelector('h1:has-text("Stop now.")')
  await close()
})

const firing = (change: Partial<FiringSummary>): FiringSummary => ({
  id: 'f-6',
  kiln: 'kiln-1',
  kilnName: 'Bird kiln',
  title: '',
  startedAt: noon - 40 * hour,
  endedAt: noon - 2 * hour,
  demo: false,
  phases: [],
  spark: { t: [], wall: [], smoke: [] },
  told: { bottles: 3, litres: 12.5, charcoalKg: 14, end: 'unloaded', alarms: [] },
  ...change,
})
const afterIt = (one: FiringSummary): Promise<Opened> =>
  open(browser, {
    view: scenes['before-lighting'],
    prepare: (fake) => {
      fake.answers['/api/lots'] = { entries: [], today: { date: '2026-10-14', clockSure: true }, offsetMin: 0 }
      fake.answers['/api/firings'] = [one]
    },
  })

test('once the drum is empty the page tells that the bottles wait, and leads to them', async () => {
  const { page, close } = await afterIt(firing({}))
  const link = page.locator('[data-key="after-firing"]')
  await link.waitFor()
  expect(await link.innerText()).toBe('Still to do: The firing of 12 October is not bottled yet.')
  expect(await violations(page)).toEqual([])
  await link.tap()
  await page.waitForSelector('h1:has-text("The firing of 12 October is not bottled yet.")')
  await close()
})

test.each([
  ['that caught nothing', { told: { bottles: 0, litres: null, charcoalKg: 14, end: 'unloaded' as const, alarms: [] } }],
  ['of a month ago', { startedAt: noon - 800 * hour, endedAt: noon - 760 * hour }],
])('a firing %s leaves nothing to bottle', async (_what, change) => {
  const { page, close } = await afterIt(firing(change))
  const asked = page.waitForResponse('**/api/firings')
  await page.reload()
  await asked
  await page.waitForSelector('[data-key="load"]')
  await page.waitForTimeout(200)
  expect(await page.locator('[data-key="after-firing"]').count()).toBe(0)
  await close()
})
