import { readdirSync, readFileSync } from 'node:fs'
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

/** What came to Chrome after 88 (browser release notes, from memory) and a page of ours might reach for. */
function asIn88(): void {
  for (const name of ['at', 'findLast', 'findLastIndex', 'toSorted', 'toReversed', 'toSpliced', 'with'])
    Reflect.deleteProperty(Array.prototype, name)
  Reflect.deleteProperty(String.prototype, 'at')
  for (const name of ['hasOwn', 'groupBy']) Reflect.deleteProperty(Object, name)
  for (const name of ['structuredClone', 'scheduler']) Reflect.deleteProperty(window, name)
  Reflect.deleteProperty(Crypto.prototype, 'randomUUID')
  Reflect.deleteProperty(HTMLElement.prototype, 'inert')
}

test('a browser of early 2021 draws the live page, its panels and the manual without a complaint', async () => {
  const { page: first, context, complaints, close } = await open(browser, { view: scenes.collecting })
  const page = await context.newPage()
  await page.addInitScript(asIn88)
  page.on('pageerror', (error) => complaints.push(error.message))
  await page.goto(first.url())
  await page.waitForSelector('.u-wrap canvas')
  expect(await page.evaluate(() => 'structuredClone' in window)).toBe(false)
  await page.goto(`${first.url()}#/now/curve`)
  await page.waitForSelector('.panel canvas')
  for (const name of ['glass', 'log', 'alarms', 'drip']) {
    await page.goto(`${first.url()}#/now/${name}`)
    await page.waitForSelector('.panel h2')
  }
  await page.goto(`${first.url()}#/manual`)
  await page.waitForSelector('main h1')
  expect(complaints).toEqual([])
  await close()
})

test('the styles of the live page use nothing younger than such a browser', () => {
  const folder = new URL('../../.build/app/web/assets/', import.meta.url).pathname
  const styles = readdirSync(folder).filter((name) => /^(index|Chart|PanelSwitch|Explorer).*\.css$/.test(name))
  expect(styles.length).toBeGreaterThan(2)
  // Chrome 105, 108, 111, 99, 105: from memory of the release notes
  for (const name of styles)
    expect(readFileSync(folder + name, 'utf8'), name).not.toMatch(/:lang\(|:has\(|\d[ds]v[hw]\b|color-mix|@layer|@container/)
})
