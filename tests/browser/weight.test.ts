import { gzipSync } from 'node:zlib'
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

test('all JavaScript that the live page ever loads is 90 kB or less, packed', async () => {
  const { page, context, close } = await open(browser, { view: scenes.waiting })
  const scripts = new Map<string, number>()
  page.on('response', (response) => {
    if (/\.js$/.test(new URL(response.url()).pathname))
      void response.body().then((body) => scripts.set(response.url(), gzipSync(body).length))
  })
  await context.clearCookies()
  await page.reload()
  await page.waitForSelector('.u-wrap canvas')
  await page.waitForTimeout(300)
  const bytes = [...scripts.values()].reduce((sum, one) => sum + one, 0)
  expect(scripts.size).toBeGreaterThan(1)
  expect(bytes).toBeLessThanOrEqual(90 * 1024)
  await close()
})

test('nothing comes from anywhere but the box', async () => {
  const { page, close } = await open(browser, { view: scenes.waiting })
  const hosts = new Set<string>()
  page.on('request', (request) => hosts.add(new URL(request.url()).host))
  await page.reload()
  await page.waitForSelector('.u-wrap canvas')
  expect([...hosts]).toEqual([new URL(page.url()).host])
  await close()
})
