import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBrowser } from '../support/browser.ts'
import { contradictions } from './arithmetic.ts'
import { channel, site } from './fake/kiln.ts'
import { scenes, type SceneName } from './fake/scenes.ts'
import type { FakeService } from './fake/service.ts'
import { open, overflowPx, sizes, violations, type Size } from './open.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

const names = Object.keys(scenes) as SceneName[]

/** Boxes of everything that a finger is meant to hit. */
function targets(page: Page): Promise<{ what: string; width: number; height: number }[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, a')].map((one) => {
      const box = one.getBoundingClientRect()
      return { what: one.innerText || one.outerHTML.slice(0, 60), width: box.width, height: box.height }
    }),
  )
}

test.each(names)('%s fits four screens, agrees with itself, and axe finds nothing by tablet and by phone', async (name) => {
  const { page, complaints, close } = await open(browser, { view: scenes[name] })
  for (const size of Object.keys(sizes) as Size[]) {
    await page.setViewportSize(sizes[size])
    expect(await overflowPx(page), size).toBe(0)
    expect(await contradictions(page), size).toEqual([])
    if (size === 'tablet' || size === 'phone') expect(await violations(page), size).toEqual([])
  }
  expect(complaints).toEqual([])
  await close()
})

test.each(['collecting', 'cloths-dry', 'night'] as const)('%s by night: axe finds nothing', async (name) => {
  const { page, close } = await open(browser, { view: scenes[name], look: 'night' })
  expect(await violations(page)).toEqual([])
  await close()
})

test.each(['before-lighting', 'waiting', 'start-due', 'collecting', 'cloths-dry', 'drip-turning', 'sealing', 'night', 'morning'] as const)(
  '%s on the tablet: everything to act with is on the first screenful',
  async (name) => {
    const { page, close } = await open(browser, { view: scenes[name], size: 'tablet' })
    const bottom = await page.evaluate(() =>
      Math.max(...[...document.querySelectorAll('.keys button')].map((key) => key.getBoundingClientRect().bottom)),
    )
    expect(bottom).toBeLessThanOrEqual(sizes.tablet.height)
    await close()
  },
)

/** Where the keys begin that stay under the thumb, and where each of these ends, px. */
function ends(page: Page, selector: string): Promise<{ keys: number; bottoms: number[]; widths: number[] }> {
  return page.evaluate((wanted) => {
    const boxes = [...document.querySelectorAll(wanted)].map((one) => one.getBoundingClientRect()).filter(({ height }) => height > 0)
    const keys = document.querySelector('div.foot')?.getBoundingClientRect().top ?? 0
    return { keys, bottoms: boxes.map(({ bottom }) => bottom), widths: boxes.map(({ width }) => width) }
  }, selector)
}

test('on a phone an alarm leaves every number above the keys', async () => {
  const { 'cloths-dry': dry } = scenes
  // the longest words: what the outlet reads and what is lost, by estimate
  const because = [
    { code: 'outlet-over-wet', value: 54, forS: 840, channel: 'yard/n1/outlet' },
    { code: 'litres-lost-least', value: 0.1 },
    { code: 'litres-lost-most', value: 1.1 },
  ]
  const alarms = dry.alarms.map((alarm) => ({ ...alarm, alarm: 'condenser-warm' as const, because }))
  const view = { ...dry, alarms, channels: [...dry.channels, channel('smoke', 129, 20)] }
  const { page, close } = await open(browser, { view, size: 'phone' })
  const { keys, bottoms } = await ends(page, '.numbers .number, .numbers .label')
  expect(bottoms).toHaveLength(8)
  expect(Math.max(...bottoms)).toBeLessThanOrEqual(keys)
  await close()
})

test('on a phone the first run stands above the keys, its words as wide as the screen', async () => {
  const prepare = (fake: FakeService): void => void (fake.site = site({ nodes: [] }))
  const { page, close } = await open(browser, { view: { ...scenes['before-lighting'], channels: [] }, size: 'phone', prepare })
  await page.waitForSelector('[data-key="demo"]')
  const { keys, bottoms, widths } = await ends(page, '.sheet button, .sheet p')
  expect(Math.max(...bottoms)).toBeLessThanOrEqual(keys)
  expect(Math.min(...widths)).toBeGreaterThan(300)
  await close()
})

test('the curve is drawn where the device names its language as no browser may', async () => {
  const { page, context, complaints, close } = await open(browser, { view: scenes.waiting })
  await context.addInitScript(() =>
    Object.defineProperty(Navigator.prototype, 'language', { get: () => 'en-US@posix', configurable: true }),
  )
  await page.reload()
  await page.waitForSelector('.u-wrap canvas', { timeout: 10_000 })
  expect(complaints).toEqual([])
  await close()
})

test('keys are 20 mm on a ten-inch tablet, everything else at least 44 px', async () => {
  // field-ui 4.2: at least 20 mm for keys that act; look.md: 94 px. WCAG 2.5.5: 44 px
  const { page, close } = await open(browser, { view: scenes['cloths-dry'] })
  const keys = await page.evaluate(() => [...document.querySelectorAll('.keys button')].map((key) => key.getBoundingClientRect().height))
  expect(Math.min(...keys)).toBeGreaterThanOrEqual(94)
  for (const { what, width, height } of await targets(page)) {
    expect(width, what).toBeGreaterThanOrEqual(44)
    if (!/and 1 more/.test(what)) expect(height, what).toBeGreaterThanOrEqual(44)
  }
  await close()
})

test('gaps between keys are wide enough for a glove', async () => {
  const { page, close } = await open(browser, { view: scenes.waiting })
  const edges = await page.evaluate(() =>
    [...document.querySelectorAll('.keys button')].map((key) => [key.getBoundingClientRect().left, key.getBoundingClientRect().right]),
  )
  for (let i = 1; i < edges.length; i += 1) expect((edges[i]?.[0] ?? 0) - (edges[i - 1]?.[1] ?? 0)).toBeGreaterThanOrEqual(12)
  await close()
})

test('digits are high enough to be read from three metres', async () => {
  // look.md: deciding number at least 14 mm, the others at least 11 mm high; a ten-inch tablet at 1024 px across has about 4.7 px a mm
  const { page, close } = await open(browser, { view: scenes.waiting })
  const heights = await page.evaluate(() => {
    const drawing = document.createElement('canvas').getContext('2d')
    return [...document.querySelectorAll<HTMLElement>('[data-role] .number')].map((number) => {
      if (!drawing) throw new Error('no canvas')
      const style = getComputedStyle(number)
      drawing.font = `${style.fontWeight} ${style.fontSize} ${style.fontFamily}`
      return drawing.measureText('8').actualBoundingBoxAscent
    })
  })
  expect(heights).toHaveLength(4)
  for (const height of heights) expect(height / 4.7).toBeGreaterThanOrEqual(11)
  expect(Math.max(...heights) / 4.7).toBeGreaterThanOrEqual(14)
  await close()
})

test.each(['day', 'night'] as const)('%s: what matters stands out at 7 : 1 or more', async (look) => {
  const { page, close } = await open(browser, { view: scenes.collecting, look })
  const ratios = await page.evaluate(() => {
    const light = (color: string): number => {
      const parts = (/\d+(\.\d+)?/g.exec(color) ? [...color.matchAll(/\d+(\.\d+)?/g)] : []).slice(0, 3).map((part) => Number(part[0]) / 255)
      const [r = 0, g = 0, b = 0] = parts.map((part) => (part <= 0.04045 ? part / 12.92 : Math.exp(2.4 * Math.log((part + 0.055) / 1.055))))
      return 0.2126 * r + 0.7152 * g + 0.0722 * b // WCAG 2.2, relative luminance
    }
    const paper = light(getComputedStyle(document.documentElement).backgroundColor)
    return [...document.querySelectorAll('h1, .until, .why, .number, .label, .keys button, nav a, dt, dd')].map((one) => {
      const ink = light(getComputedStyle(one).color)
      return (Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05)
    })
  })
  expect(ratios.length).toBeGreaterThan(20)
  expect(Math.min(...ratios)).toBeGreaterThanOrEqual(7)
  await close()
})

test('the typeface comes from the box', async () => {
  const { page, close } = await open(browser, { view: scenes.waiting })
  expect(await page.evaluate(() => document.fonts.check('800 68px "Atkinson Hyperlegible Next"'))).toBe(true)
  await close()
})

test.each(['waiting', 'night', 'cloths-dry'] as const)('%s at 200 %% zoom: nothing is cut off, nothing is lost', async (name) => {
  // 200 % of a 1024 x 768 tablet leaves 512 x 384 CSS pixels
  const { page, close } = await open(browser, { view: scenes[name] })
  await page.setViewportSize({ width: 512, height: 384 })
  expect(await overflowPx(page)).toBe(0)
  expect(await violations(page)).toEqual([])
  for (const key of await page.locator('.keys button').all()) {
    await key.scrollIntoViewIfNeeded()
    expect(await key.isVisible()).toBe(true)
  }
  await close()
})

test('the check of the arithmetic sees a number told in two ways and a range that is over', async () => {
  const { page, close } = await open(browser, { view: scenes.waiting })
  const say = (where: string, text: string) => page.locator(where).evaluate((node, other) => (node.textContent = other), text)
  await say('.why', 'Smoke 71 °C, climbing 20 °C an hour. Outlet 34 °C, over 55 °C.')
  await say('.until', 'Start collecting likely between 06:10 and 05:50.')
  expect(await contradictions(page)).toHaveLength(4)
  await close()
})
