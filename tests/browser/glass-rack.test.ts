import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBrowser } from '../support/browser.ts'
import { driveApp, type DrivenApp } from '../support/driven-app.ts'
import { writePng } from '../support/png.ts'
import { violations } from './open.ts'

let browser: Browser
let live: DrivenApp
beforeAll(async () => {
  browser = await openBrowser()
  live = await driveApp({ at: Date.UTC(2026, 2, 14, 8) })
  await live.publish('readings', { firebox: 700, wall: 200, outlet: 30 })
})
afterAll(async () => {
  await browser.close()
  await live.client.endAsync(true)
  await live.app.stop()
})

/** An amber picture as a camera might give it, far larger than what is kept. */
function photograph(width: number, height: number): Buffer {
  const rgb = new Uint8Array(width * height * 3)
  for (let at = 0; at < rgb.length; at += 3) rgb.set([176, 106, 26], at)
  return writePng({ width, height, rgb })
}

const put = (path: string, body: Uint8Array<ArrayBuffer>) =>
  fetch(`${live.url}/api/glasses/${path}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/octet-stream', origin: live.url },
    body,
  })

test('a photographed glass stands in the rack and becomes one of this kiln’s own choices', async () => {
  const context = await browser.newContext({ viewport: { width: 1024, height: 768 }, hasTouch: true, locale: 'en-GB', timezoneId: 'UTC' })
  const page = await context.newPage()
  const complaints: string[] = []
  page.on('pageerror', (error) => complaints.push(error.message))
  await page.goto(`${live.url}/#/now/glass`)
  await page.waitForSelector('.panel h2')
  await page.waitForTimeout(350)
  await page.locator('[data-key="photograph"]').setInputFiles({ name: 'glass.png', mimeType: 'image/png', buffer: photograph(1600, 1200) })
  await page.waitForSelector('.take img')
  expect(await page.locator('.take').innerText()).toContain('Now touch what it looks like.')
  expect(await violations(page)).toEqual([])
  await page.tap('[data-key="glass-amber"]')
  await page.waitForSelector('.keys')
  await expect.poll(async () => (await fetch(`${live.url}/api/glasses/kiln-1`)).json()).toEqual({ amber: expect.any(String) as string })
  const { amber } = (await (await fetch(`${live.url}/api/glasses/kiln-1`)).json()) as { amber: string }
  const picture = await fetch(`${live.url}/api/glasses/kiln-1/${amber}`)
  expect(picture.headers.get('content-type')).toBe('image/jpeg')
  expect((await picture.arrayBuffer()).byteLength).toBeLessThan(30_000)
  await page.goto(`${live.url}/#/now/glass`)
  const loaded = (where: string) => page.locator(where).evaluate((img) => (img as HTMLImageElement).naturalWidth)
  await page.waitForSelector('.panel li img')
  await expect.poll(() => loaded('.panel li img')).toBe(320)
  expect(await page.locator('.panel h2').innerText()).toBe('Glass 2 of the drip')
  await page.goto(`${live.url}/#/now/drip`)
  await page.waitForSelector('[data-key="drip-amber"] img')
  await expect.poll(() => loaded('[data-key="drip-amber"] img')).toBe(320)
  expect(await page.locator('[data-key="drip-dark"] svg').count()).toBe(1)
  expect(complaints).toEqual([])
  await context.close()
})

test('what is no picture, too large, or of no look is turned away; the first of an act stays', async () => {
  const jpeg = new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3, 4])
  expect((await put('kiln-1/a?drip=dark', new TextEncoder().encode('<svg onload="alert(1)"/>'))).status).toBe(422)
  expect((await put('kiln-1/a?drip=dark', new Uint8Array([0xff, 0xd8, 0xff, ...new Uint8Array(60_001)]))).status).toBe(413)
  expect((await put('kiln-1/a?drip=green', jpeg)).status).toBe(422)
  expect((await put('kiln-1/a', jpeg)).status).toBe(422)
  expect((await fetch(`${live.url}/api/glasses/kiln-1/a`)).status).toBe(404)
  expect((await put('kiln-1/a?drip=dark', jpeg)).status).toBe(204)
  expect((await put('kiln-1/a?drip=pale', new Uint8Array([...jpeg, 9]))).status).toBe(204)
  expect(new Uint8Array(await (await fetch(`${live.url}/api/glasses/kiln-1/a`)).arrayBuffer())).toEqual(jpeg)
  expect(await (await fetch(`${live.url}/api/glasses/kiln-1`)).json()).toMatchObject({ dark: 'a' })
})

test('a picture that was taken with the link down waits on the tablet and is sent by itself', async () => {
  const context = await browser.newContext({ viewport: { width: 360, height: 640 }, hasTouch: true })
  const page = await context.newPage()
  await page.goto(live.url)
  await page.waitForSelector('.keys')
  await page.waitForFunction(() => performance.getEntriesByType('resource').some(({ name }) => /PanelSwitch.*js/.test(name)))
  await page.waitForLoadState('networkidle')
  await context.setOffline(true)
  await page.evaluate(() => (location.hash = '#/now/glass'))
  await page.waitForSelector('.panel h2')
  await page.waitForTimeout(350)
  await page.locator('[data-key="photograph"]').setInputFiles({ name: 'g.png', mimeType: 'image/png', buffer: photograph(300, 400) })
  await page.waitForSelector('.take img')
  await page.tap('[data-key="glass-black"]')
  await page.waitForSelector('.keys')
  expect(await (await fetch(`${live.url}/api/glasses/kiln-1`)).json()).not.toHaveProperty('black')
  await context.setOffline(false)
  await page.reload()
  await expect.poll(async () => (await fetch(`${live.url}/api/glasses/kiln-1`)).json()).toHaveProperty('black')
  await context.close()
})
