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

test('the live page with its curve is 90 kB of JavaScript or less, packed (panels follow once it stands)', async () => {
  // what waits for an idle moment is held back
  const { page, close } = await open(browser, { view: scenes.waiting, neverIdle: true })
  await page.waitForSelector('.u-wrap canvas')
  await page.waitForTimeout(300)
  const addresses = await page.evaluate(() => performance.getEntriesByType('resource').map((one) => one.name))
  const scripts = new Set(addresses.filter((address) => /\.js$/.test(new URL(address).pathname)))
  let bytes = 0
  for (const address of scripts) bytes += gzipSync(await (await page.request.get(address)).body()).length
  expect(scripts.size).toBeGreaterThan(1)
  expect(bytes).toBeLessThanOrEqual(90_000)
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
