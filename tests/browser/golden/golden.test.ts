import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser } from '../../support/browser.ts'
import { readPng, writePng } from '../../support/png.ts'
import { scenes } from '../fake/scenes.ts'
import { open } from '../open.ts'
import { difference } from './look-alike.ts'

// How the live page looked when somebody last looked at it. Made anew by GOLDEN=write npx vitest run ... tests/browser/golden; look at them before keeping them.
const pictures = new URL('pictures/', import.meta.url).pathname
const failed = new URL('../../.out/golden/', import.meta.url).pathname
/** Of all cells: the clock and the age of a reading may be a second on, a word may not be another. */
const tolerance = 0.004

const states = ['before-lighting', 'waiting', 'collecting', 'cloths-dry', 'sealing', 'night'] as const
const byNight = ['collecting', 'cloths-dry'] as const
const golden = (['tablet', 'phone'] as const).flatMap((size) => [
  ...states.map((state) => ({ state, size, look: state === 'night' ? ('night' as const) : ('day' as const), name: `${state}-${size}` })),
  ...byNight.map((state) => ({ state, size, look: 'night' as const, name: `${state}-${size}-night` })),
])

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
  mkdirSync(pictures, { recursive: true })
  mkdirSync(failed, { recursive: true })
})
afterAll(() => browser.close())

async function still(page: Page): Promise<Buffer> {
  await page.waitForSelector('.u-wrap canvas')
  await page.waitForTimeout(250)
  return page.screenshot({ animations: 'disabled' })
}

test.each(golden)('$name looks as it did', async ({ state, size, look, name }) => {
  const { page, close } = await open(browser, { view: scenes[state], size, look })
  const shot = readPng(await still(page))
  await close()
  const path = `${pictures}${name}.png`
  if (process.env.GOLDEN === 'write') writeFileSync(path, writePng(shot))
  expect(existsSync(path), 'a picture to compare with').toBe(true)
  const apart = difference(shot, readPng(readFileSync(path)))
  if (apart > tolerance) writeFileSync(`${failed}${name}.png`, writePng(shot))
  expect(apart).toBeLessThanOrEqual(tolerance)
})

describe('the comparison', () => {
  test('sees another number and another command', async () => {
    const { page, close } = await open(browser, { view: scenes.waiting })
    const before = readPng(await still(page))
    for (const [where, text] of [
      ['[data-role="smoke"] .number', '41'],
      ['h1', 'Collect.'],
    ] as const) {
      await page.locator(where).evaluate((node, other) => (node.textContent = other), text)
      expect(difference(before, readPng(await page.screenshot()))).toBeGreaterThan(tolerance)
    }
    await close()
  })

  test('reads back what was written, to within the nearest of its colours', async () => {
    const { page, close } = await open(browser, { view: scenes.collecting })
    const shot = readPng(await still(page))
    expect(difference(shot, readPng(writePng(shot)))).toBe(0)
    await close()
  })
})
