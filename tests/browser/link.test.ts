import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBrowser } from '../support/browser.ts'
import { scenes } from './fake/scenes.ts'
import { open } from './open.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

test('a silent link is said after 6 s and covers the numbers after 15 s; the keys go on working', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  fake.silent = true
  fake.refuse = true
  await page.waitForSelector('text=/No word from the kiln box for [6-9] s/', { timeout: 12_000 })
  expect(await page.locator('text=No data').count()).toBe(0)
  await page.waitForSelector('h2:has-text("No data")', { timeout: 14_000 })
  const covered = await page.evaluate(() => {
    const number = document.querySelector('[data-role="firebox"] .number')?.getBoundingClientRect()
    return number && document.elementFromPoint(number.left + 5, number.top + 5)?.closest('[data-role]') === null
  })
  expect(covered).toBe(true)
  fake.cut()
  await page.tap('[data-key="refuel"]')
  await page.waitForSelector('text=/waits for the link/')
  await close()
})

test('entries made while the link is down wait visibly, outlive a reload, and arrive once', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  fake.refuse = true
  fake.cut()
  await page.waitForTimeout(500)
  await page.tap('[data-key="refuel"]')
  await page.tap('[data-key="wet-condenser"]')
  await page.waitForSelector('header >> text=2 entries wait for the link')
  expect(fake.acts).toEqual([])
  fake.refuse = false
  await page.reload()
  await expect.poll(() => fake.acts.map((act) => act.act.action)).toEqual(['refuel', 'wet-condenser'])
  await expect.poll(() => page.locator('text=/wait for the link/').count()).toBe(0)
  fake.cut()
  await page.waitForTimeout(1500)
  expect(fake.acts).toHaveLength(2)
  await close()
})

test('a demo that went with the box is told as gone, not looked for, and is offered anew', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting, path: 'demo/' })
  // the box was started anew: it answers, and knows of no demo
  await page.route('**/demo/api/**', (route) => route.fulfill({ status: 404, json: { problem: 'no-demo' } }))
  fake.silent = true
  fake.refuse = true
  fake.cut()
  await page.waitForSelector('h2:has-text("The demo is gone.")', { timeout: 12_000 })
  await page.tap('[role=alert] [data-key="demo"]')
  await expect
    .poll(() => fake.posts.map(({ path, body }) => ({ path, body })))
    .toEqual([{ path: '/api/demo', body: { speed: 60, anew: true } }])
  await close()
})

test('after a cut the page finds the box again by itself', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  fake.cut()
  fake.kilns = { 'kiln-1': scenes.sealing }
  await page.waitForSelector('h1:has-text("Seal it.")', { timeout: 8000 })
  await close()
})

test('the panels are here a moment after the page stands: a key opens its panel with no network at all', async () => {
  const { page, context, close } = await open(browser, { view: scenes.waiting })
  await page.waitForFunction(() => performance.getEntriesByType('resource').some(({ name }) => /PanelSwitch.*js/.test(name)), null, {
    timeout: 2500,
  })
  await page.waitForLoadState('networkidle')
  await context.setOffline(true)
  await page.waitForTimeout(400)
  await page.tap('[data-key="smoke"]')
  await page.waitForSelector('.panel h2')
  await close()
})

test('a panel that a cut kept away comes when it is wanted and the box answers again', async () => {
  const { page: first, context, close } = await open(browser, { view: scenes.waiting })
  const page = await context.newPage()
  let turnedAway = 0
  await page.route(/PanelSwitch.*js/, (route) => (turnedAway++ === 0 ? route.abort() : route.continue()))
  await page.goto(first.url())
  await page.waitForSelector('[data-key="smoke"]')
  await expect.poll(() => turnedAway).toBe(1)
  await page.waitForTimeout(400)
  await page.tap('[data-key="smoke"]')
  await page.waitForSelector('.panel h2')
  await close()
})

test('after a sleep it says how long it was blind', async () => {
  const { page, close } = await open(browser, { view: scenes.waiting })
  await page.evaluate(() => {
    const real = Date.now.bind(Date)
    Date.now = () => real() + 23 * 60_000
  })
  await page.waitForSelector('text=This page was blind for 23 min.')
  await page.tap('text=I have seen it')
  await expect.poll(() => page.locator('text=/blind for/').count()).toBe(0)
  await close()
})

test('with nobody sending, one touch plays the demo', async () => {
  const { page, fake, close } = await open(browser, {
    view: null,
    prepare: (one) => {
      one.site = { ...one.site, nodes: [] }
    },
  })
  await page.tap('[data-key="demo"]')
  await page.waitForURL(/\/demo\/$/)
  expect(fake.posts).toEqual([{ path: '/api/demo', body: { speed: 60, anew: true } }])
  await page.waitForSelector('text=Demo data')
  await close()
})
