import { spawn, type ChildProcess } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser } from '../support/browser.ts'
import { violations } from './open.ts'

/** The real service on a clean data folder: what somebody sees who has just started it. */
let browser: Browser
let service: ChildProcess
let home = ''
const data = mkdtempSync(join(tmpdir(), 'kiln-journey-'))

beforeAll(async () => {
  const flags = ['--port', '0', '--mqtt-port', '0', '--host', '127.0.0.1', '--data', data]
  service = spawn(process.execPath, ['.build/app/server/main.js', ...flags], { stdio: ['ignore', 'pipe', 'pipe'] })
  home = await new Promise<string>((found, failed) => {
    let told = ''
    const hear = (chunk: Buffer): void => {
      told += chunk.toString()
      const port = /http:\/\/localhost:(\d+)\//.exec(told)?.[1]
      if (port !== undefined) found(`http://127.0.0.1:${port}/`)
    }
    service.stdout?.on('data', hear)
    service.stderr?.on('data', hear)
    service.on('exit', (code) => failed(new Error(`the service ended with ${code}: ${told}`)))
  })
  browser = await openBrowser()
})
afterAll(async () => {
  await browser.close()
  service.removeAllListeners('exit')
  const ended = new Promise((done) => service.once('exit', done))
  service.kill('SIGTERM')
  await ended
  rmSync(data, { recursive: true, force: true })
})

const command = (page: Page) => page.locator('h1').innerText()

describe('from a clean start', () => {
  let page: Page
  const complaints: string[] = []

  beforeAll(async () => {
    const context = await browser.newContext({ viewport: { width: 1024, height: 768 }, hasTouch: true, locale: 'en-GB', timezoneId: 'UTC' })
    page = await context.newPage()
    page.on('pageerror', (error) => complaints.push(error.message))
    page.on('console', (message) => {
      // a document that nobody has written yet is answered with 404
      const unwritten = /\/api\/documents\//.test(message.location().url)
      if (message.type() === 'error' && !unwritten && !/WebSocket/.test(message.text()))
        complaints.push(`${message.text()} ${message.location().url}`)
    })
  })

  test('one touch plays the demo firing, marked as such, from lighting to collecting', async () => {
    await page.goto(home)
    await page.tap('[data-key="demo"]')
    await page.waitForURL(/\/demo\/$/)
    await page.waitForSelector('header >> text=Demo data')
    await page.tap('text=× 600')
    const seen: string[] = []
    await expect
      .poll(
        async () => {
          const now = await command(page)
          if (seen.at(-1) !== now) seen.push(now)
          return now
        },
        { timeout: 60_000, interval: 50 },
      )
      .toBe('Collect.')
    expect(seen).toContain('Wait.')
    await page.waitForSelector('.u-wrap canvas')
    expect(await violations(page)).toEqual([])
  })

  test('a reload shows the same at once', async () => {
    await page.tap('text=× 1 >> nth=0')
    await page.waitForTimeout(300)
    const before = await command(page)
    await page.reload()
    await page.waitForSelector('[data-role="firebox"] .number')
    expect(await command(page)).toBe(before)
  })

  test('what is logged here comes back from the service', async () => {
    await page.waitForTimeout(400)
    await page.tap('[data-key="smoke"]')
    await page.waitForTimeout(400)
    await page.tap('[data-key="smoke-yellow"]')
    await page.tap('[data-key="log"]')
    await page.waitForSelector('.panel li >> text=Seen: smoke yellow, stings')
    expect(await page.locator('.panel .wait').count()).toBe(0)
  })

  test('the firing stands on the shelf and opens with its curve, phases and log', async () => {
    await page.tap('nav >> text=Firings')
    await page.tap('main li a')
    await page.waitForSelector('.u-wrap canvas')
    const text = await page.locator('main').innerText()
    expect(text).toMatch(/Kindling/)
    expect(text).toMatch(/Vinegar run/)
    expect(text).toMatch(/started collecting/i)
    expect(await violations(page)).toEqual([])
    await page.tap('[data-key="table"]')
    await page.waitForSelector('table >> text=condenser outlet, °C')
  })

  test('the recording that it gives is one of ours', async () => {
    const address = await page.locator('a[download$=".jsonl"]').getAttribute('href')
    const text = await (await page.request.get(address ?? '')).text()
    expect(JSON.parse(text.split('\n')[0] ?? '')).toMatchObject({ recording: 1, demo: true })
  })

  test('every entry of the strip leads somewhere, and axe finds nothing there', async () => {
    for (const name of ['Lots', 'Use', 'Plan', 'Set up']) {
      await page.tap(`nav >> text=${name}`)
      await page.waitForSelector(`nav a[aria-current="page"]:has-text("${name}")`)
      await page.waitForLoadState('networkidle')
      await page.waitForSelector('main h1')
      expect(await violations(page), name).toEqual([])
    }
    await page.tap('nav >> text=Now')
    await page.waitForSelector('.keys')
    expect(complaints).toEqual([])
  })
})
