import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBrowser } from '../support/browser.ts'
import { channel, minute, noon } from './fake/kiln.ts'
import { scenes } from './fake/scenes.ts'
import { open, overflowPx, violations } from './open.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

/** Keys ignore touches for 300 ms after they changed: by the page's own clock, and once it has fetched what the panels need. */
async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => performance.getEntriesByType('resource').some(({ name }) => /PanelSwitch.*js/.test(name)))
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done, 400)))))
}

test('one touch logs, a second one within two seconds is the same touch', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  await settled(page)
  await page.tap('[data-key="refuel"]')
  await page.tap('[data-key="refuel"]')
  await expect.poll(() => fake.acts.length).toBe(1)
  await page.waitForTimeout(300)
  expect(fake.acts.map((act) => act.act)).toEqual([{ action: 'refuel' }])
  expect(Math.abs((fake.acts[0]?.doneAt ?? 0) - noon)).toBeLessThan(5000)
  await close()
})

test('a number that can not be is told beside its field, before it is sent', async () => {
  const { page, fake, close } = await open(browser, { view: scenes['before-lighting'] })
  await settled(page)
  await page.tap('[data-key="load"]')
  const [mass, moisture] = [page.locator('main input').nth(0), page.locator('main input').nth(1)]
  await mass.fill('62,5')
  await moisture.fill('200')
  await page.waitForSelector('.wrong:has-text("Enter a number from 0 to 95.")')
  await settled(page)
  expect(await page.locator('button[data-key="log"]').isDisabled()).toBe(true)
  await moisture.fill('20')
  await page.locator('button[data-key="log"]').tap()
  await expect.poll(() => fake.acts.map(({ act }) => act)).toEqual([{ action: 'load', massKg: 62.5, moisturePct: 20 }])
  await close()
})

test('what another tablet logs meanwhile is told in the open panel, so that one bottle is not counted twice', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.collecting })
  await settled(page)
  await page.tap('[data-key="swap-bottle"]')
  await page.waitForSelector('[data-key="amount-unknown"]')
  expect(await page.locator('main [role=alert]').count()).toBe(0)
  const { firing } = scenes.collecting
  const other = { id: 'other', at: noon, doneAt: noon, act: { action: 'swap-bottle' as const, litres: 4.5 } }
  fake.part('firing', { ...firing, acts: [...firing.acts, other] })
  await page.waitForSelector('[role=alert]:has-text("Already logged on another tablet: Changed the bottle: 4.5 L, 08:31.")')
  await close()
})

test('a panel that stands open while another tablet closes the firing says so', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.collecting })
  await settled(page)
  await page.tap('[data-key="swap-bottle"]')
  await page.waitForSelector('[data-key="amount-unknown"]')
  fake.part('firing', scenes['before-lighting'].firing)
  await page.waitForSelector('[role=alert]:has-text("Meanwhile this firing was closed on another tablet.")')
  await close()
})

test('a fire that has burnt for an hour is logged so in two touches', async () => {
  const before = scenes['before-lighting']
  const { page, fake, close } = await open(browser, { view: { ...before, channels: [channel('firebox', 690)] }, size: 'phone' })
  await settled(page)
  await page.tap('[data-key="light"]')
  await page.tap('.just button:has-text("60 min earlier")')
  await expect.poll(() => fake.acts.length).toBe(2)
  const [first, last] = fake.acts
  expect(last).toMatchObject({ corrects: first?.id, act: { action: 'light' } })
  expect((first?.doneAt ?? 0) - (last?.doneAt ?? 0)).toBe(60 * minute)
  expect(await overflowPx(page)).toBe(0)
  await close()
})

test('an entry that was refused is told on top, and one touch leads to where it stands and is put away', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  await settled(page)
  fake.refuse = true
  fake.cut()
  await page.waitForTimeout(300)
  await page.tap('[data-key="refuel"]')
  await page.waitForSelector('header >> text=1 entry waits for the link')
  const refused = await page.evaluate(() => {
    const [key = '', kept = '[]'] = Object.entries(localStorage).find(([name]) => name.startsWith('outbox')) ?? []
    localStorage.setItem(key, JSON.stringify((JSON.parse(kept) as object[]).map((one) => ({ ...one, problem: 'not-understood' }))))
    return key
  })
  expect(refused).toBe('outbox /')
  fake.refuse = false
  await page.reload()
  await page.tap('[data-key="refused"]')
  await page.waitForSelector('text=/refused: it was not understood/')
  expect(await violations(page)).toEqual([])
  await page.tap('button:has-text("Forget it")')
  await expect.poll(() => page.locator('[data-key="refused"]').count()).toBe(0)
  await close()
})

test('every touch is taken while readings arrive ten times a second', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  await settled(page)
  const readings = setInterval(() => fake.part('channels', [...scenes.waiting.channels]), 100)
  try {
    for (const [index, key] of ['refuel', 'wet-condenser', 'start-collecting'].entries()) {
      await settled(page)
      await page.tap(`[data-key="${key}"]`)
      await expect.poll(() => fake.acts.length).toBe(index + 1)
    }
    expect(fake.acts.map(({ act }) => act.action)).toEqual(['refuel', 'wet-condenser', 'start-collecting'])
  } finally {
    clearInterval(readings)
    await close()
  }
})

test('a touch just after the keys changed was meant for what stood there before', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  await settled(page)
  // in the page, so that the touch comes as soon as the new key stands
  await page.evaluate(() => {
    new MutationObserver((_, watch) => {
      const key = document.querySelector<HTMLElement>('[data-key="stop-collecting"]')
      if (!key) return
      watch.disconnect()
      key.click()
      document.body.dataset.touched = 'yes'
    }).observe(document.body, { subtree: true, childList: true, attributes: true })
  })
  fake.part('firing', { ...scenes.waiting.firing, collectingSince: noon })
  await page.waitForSelector('body[data-touched]')
  await settled(page)
  expect(fake.acts).toEqual([])
  await page.tap('[data-key="stop-collecting"]')
  await expect.poll(() => fake.acts.map(({ act }) => act.action)).toEqual(['stop-collecting'])
  await close()
})

test('five minutes earlier: a later entry names the first', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  await settled(page)
  await page.tap('[data-key="wet-condenser"]')
  await page.tap('.just button:has-text("5 min earlier")')
  await expect.poll(() => fake.acts.length).toBe(2)
  const [first, second] = fake.acts
  expect(second).toMatchObject({ act: { action: 'wet-condenser' }, corrects: first?.id, doneAt: (first?.doneAt ?? 0) - 5 * minute })
  await close()
})

test('it was not so: taken back by a later entry, nothing is erased', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  await settled(page)
  await page.tap('[data-key="start-collecting"]')
  await page.tap('.just button:has-text("It was not so")')
  await expect.poll(() => fake.acts.length).toBe(2)
  expect(fake.acts[1]).toMatchObject({ act: { action: 'note', text: '' }, corrects: fake.acts[0]?.id })
  await close()
})

test.each([
  ['drip', 'drip-dark', { action: 'observe', drip: 'dark' }],
  ['smoke', 'smoke-yellow', { action: 'observe', smoke: 'yellow' }],
] as const)('%s by its picture, twenty minutes ago', async (key, choice, act) => {
  const { page, fake, close } = await open(browser, { view: scenes.collecting })
  await settled(page)
  await page.tap(`[data-key="${key}"]`)
  await settled(page)
  expect(await violations(page)).toEqual([])
  await page.tap('.when button:has-text("20 min ago")')
  await page.tap(`[data-key="${choice}"]`)
  await expect.poll(() => fake.acts.map((one) => one.act)).toEqual([act])
  expect(Math.abs((fake.acts[0]?.doneAt ?? 0) - (noon - 20 * minute))).toBeLessThan(8000)
  await page.waitForSelector('.keys')
  await close()
})

test('sealing takes two touches in two places, and says the order', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.sealing })
  await settled(page)
  const first = await page.locator('[data-key="seal"]').boundingBox()
  await page.tap('[data-key="seal"]')
  await settled(page)
  expect(await page.locator('.panel ol').innerText()).toMatch(/mouth first[\s\S]*chimney, last/i)
  const second = await page.locator('[data-key="go"]').boundingBox()
  if (!first || !second) throw new Error('a key is missing')
  const apart =
    second.x + second.width <= first.x ||
    second.x >= first.x + first.width ||
    second.y + second.height <= first.y ||
    second.y >= first.y + first.height
  expect(apart).toBe(true)
  expect(fake.acts).toEqual([])
  await page.tap('[data-key="go"]')
  await expect.poll(() => fake.acts.map((one) => one.act)).toEqual([{ action: 'seal' }])
  await close()
})

test('trial opening shows its cautions before anything is logged', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.morning })
  await settled(page)
  await page.tap('[data-key="crack"]')
  await settled(page)
  const told = await page.locator('.panel').innerText()
  expect(told).toMatch(/clay/i)
  expect(told).toMatch(/30 minutes/)
  expect(told).toMatch(/Carbon monoxide/)
  expect(fake.acts).toEqual([])
  await close()
})

test('a changed bottle with its litres, a decimal comma, and a word that is no number', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.collecting })
  await settled(page)
  await page.tap('[data-key="swap-bottle"]')
  await settled(page)
  await page.fill('.field input', 'two')
  expect(await page.locator('.field .wrong').innerText()).toBe('A number is needed here.')
  expect(await page.locator('.foot [data-key="log"]').isDisabled()).toBe(true)
  await page.fill('.field input', '2,5')
  await page.locator('.foot [data-key="log"]').tap()
  await expect.poll(() => fake.acts.map((one) => one.act)).toEqual([{ action: 'swap-bottle', litres: 2.5 }])
  await close()
})

test('air: mouth and chimney', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  await settled(page)
  await page.tap('[data-key="air"]')
  await settled(page)
  await page.tap('[data-key="mouth-half"]')
  await page.tap('[data-key="chimney-open"]')
  await page.locator('.foot [data-key="log"]').tap()
  await expect.poll(() => fake.acts.map((one) => one.act)).toEqual([{ action: 'air', mouth: 'half', chimney: 'open' }])
  await close()
})

test('arming asks for both ears and keeps what was heard', async () => {
  const { page, fake, close } = await open(browser, { view: scenes['before-lighting'] })
  await settled(page)
  await page.tap('[data-key="soundTest"]')
  await settled(page)
  await page.tap('[data-key="play"]')
  await page.tap('[data-key="tablet-yes"]')
  await page.tap('[data-key="buzzer-no"]')
  await expect.poll(() => fake.acts.map((one) => one.act)).toEqual([{ action: 'arm' }, { action: 'arm', tablet: true, buzzer: false }])
  expect(await page.locator('.panel [role="status"]').innerText()).toContain('not everything was heard')
  await close()
})

test('the log: an entry is put right by a later one', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting, path: '#/now/log' })
  await settled(page)
  await page.tap('[data-key="correct-a2"]')
  await page.tap('.panel li button:has-text("30 min earlier")')
  await expect.poll(() => fake.acts.length).toBe(1)
  expect(fake.acts[0]).toMatchObject({ act: { action: 'refuel' }, corrects: 'a2', doneAt: noon - 68 * minute })
  await close()
})

test('by keyboard alone: reach a key, open a panel, leave it, and be where one was', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  await settled(page)
  const focused = () => page.evaluate(() => (document.activeElement as HTMLElement | null)?.dataset.key ?? document.activeElement?.tagName)
  for (let i = 0; i < 12 && (await focused()) !== 'drip'; i += 1) await page.keyboard.press('Tab')
  expect(await focused()).toBe('drip')
  await page.keyboard.press('Enter')
  await expect.poll(focused).toBe('H2')
  await page.keyboard.press('Escape')
  await expect.poll(focused).toBe('drip')
  await settled(page)
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.press('Enter')
  await expect.poll(() => fake.acts.map((one) => one.act)).toEqual([{ action: 'wet-condenser' }])
  await close()
})
