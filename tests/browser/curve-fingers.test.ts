import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBrowser } from '../support/browser.ts'
import { scenes } from './fake/scenes.ts'
import { open, overflowPx, type Opened } from './open.ts'

let browser: Browser
let at: Opened
beforeAll(async () => {
  browser = await openBrowser()
  const { acts } = scenes.waiting.firing
  const view = { ...scenes.collecting, firing: { ...scenes.collecting.firing, acts } }
  at = await open(browser, { view, size: 'phone', path: '#/now/curve' })
  await at.page.waitForSelector('.large canvas')
  await at.page.waitForTimeout(400)
})
afterAll(async () => {
  await at.close()
  await browser.close()
})

type Point = { x: number; y: number }

async function drag(ways: readonly { from: Point; to: Point }[]): Promise<void> {
  const devtools = await at.context.newCDPSession(at.page)
  const points = (share: number) =>
    ways.map(({ from, to }, id) => ({ id, x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }))
  await devtools.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: points(0) })
  for (const share of [0.25, 0.5, 0.75, 1]) {
    await devtools.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: points(share) })
    await at.page.waitForTimeout(30)
  }
  await devtools.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
  await at.page.waitForTimeout(200)
}

/** Where the ribbon's phases lie tells which part of the firing is shown. */
const shown = () => at.page.locator('.large .ribbon span').evaluateAll((parts) => parts.map((part) => (part as HTMLElement).style.cssText))

async function middle(): Promise<Point> {
  await at.page.locator('.large').scrollIntoViewIfNeeded()
  const box = await at.page.locator('.large').boundingBox()
  if (!box) throw new Error('no curve')
  return { x: box.x + box.width * 0.35, y: box.y + box.height / 2 }
}

test('two fingers stretch it, one moves it, and a key brings the whole back', async () => {
  const whole = await shown()
  const { x, y } = await middle()
  await drag([
    { from: { x: x - 20, y }, to: { x: x - 30, y } },
    { from: { x: x + 20, y }, to: { x: x + 30, y } },
  ])
  const closer = await shown()
  expect(closer).not.toEqual(whole)
  await drag([{ from: { x, y }, to: { x: x + 80, y } }])
  expect(await shown()).not.toEqual(closer)
  await at.page.tap('[data-key="whole"]')
  await expect.poll(shown).toEqual(whole)
  expect(await overflowPx(at.page)).toBe(0)
})

test('a finger that goes up or down scrolls the page and leaves the curve alone', async () => {
  const before = await shown()
  await at.page.evaluate(() => scrollTo(0, 0))
  const { x } = await middle()
  const scrolled = () => at.page.evaluate(() => scrollY)
  const from = await scrolled()
  const box = await at.page.locator('.large').boundingBox()
  const y = (box?.y ?? 0) + (box?.height ?? 0) - 20
  await drag([{ from: { x, y }, to: { x, y: y - 160 } }])
  expect(await scrolled()).not.toBe(from)
  expect(await shown()).toEqual(before)
})

test('a touched mark is told, and all of them are listed beside the table', async () => {
  await at.page.tap('[data-key="table"]')
  const listed = async () => (await at.page.locator('.panel ul li').allInnerTexts()).map((line) => line.replace(/\s+/g, ' '))
  await expect.poll(listed).toEqual(['07:10 lit', '07:53 fed the fire', '08:22 wetted the cloths'])
  await at.page.tap('[data-key="table"]')
})
