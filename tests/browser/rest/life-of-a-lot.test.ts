import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { openBrowser } from '../../support/browser.ts'
import { say } from '../../support/figures.ts'
import { RestSite } from '../../support/rest-site.ts'
import { keepPicture } from '../pictures.ts'

const lit = Date.parse('2026-10-14T05:00:00')

/** Counts what a finger does; typing on the number pad is no touch of the page. */
class Finger {
  touches = 0
  private readonly page: Page
  constructor(page: Page) {
    this.page = page
  }
  async touch(selector: string): Promise<void> {
    this.touches += 1
    await this.page.locator(selector).first().click()
  }
  async type(...texts: string[]): Promise<void> {
    for (const [place, text] of texts.entries()) {
      if (place > 0) await this.page.keyboard.press('Enter')
      await this.page.keyboard.press('ControlOrMeta+a')
      await this.page.keyboard.type(text)
    }
  }
}

describe('the whole life of a lot, with the clock moved', () => {
  let browser: Browser
  let site: RestSite
  let page: Page
  let address: string
  const complaints: string[] = []

  beforeAll(async () => {
    browser = await openBrowser()
  })
  afterAll(async () => browser.close())

  beforeEach(async () => {
    site = new RestSite(Date.parse('2026-10-16T09:00:00'))
    address = await site.start()
    page = await browser.newPage({ viewport: { width: 1024, height: 768 }, locale: 'en-GB' })
    complaints.length = 0
    page.on('pageerror', (error) => complaints.push(error.message))
    page.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text())
    })
  })
  afterEach(async () => {
    await page.close()
    await site.stop()
  })

  const heading = (): Promise<string> => page.locator('h1').innerText()

  it('goes from a finished firing to a printed sprayer’s card in at most twelve touches', async () => {
    await site.finishedFiring('f-demo', lit)
    await page.goto(address)
    await page.evaluate('window.print = () => { window.printed = (window.printed ?? 0) + 1 }')
    const finger = new Finger(page)

    await finger.touch('nav a[href="#/lots"]')
    await page.locator('[data-key=fromFiring]').waitFor()
    expect(await heading()).toBe('The firing of 14 October is not bottled yet.')
    await finger.touch('[data-key=fromFiring]')
    await page.locator('text=Collected at 82 °C to 111 °C of smoke.').waitFor()
    // what the log can not know: the wood; two bottles and the vessel are filled in already
    await page.locator('input[name=wood]').fill('eucalyptus')
    await finger.touch('[data-key=keep]')
    await page.locator('h1:has-text("Leave lot 1 alone until 12 January.")').waitFor()
    expect(await page.locator('.second').first().innerText()).toBe('Rested 2 of 90 days. Nothing to do; do not move or shake it.')
    await keepPicture(page, 'lot-resting')

    site.moveDays(88)
    await page.reload()
    await page.evaluate('window.print = () => { window.printed = (window.printed ?? 0) + 1 }')
    await page.locator('h1:has-text("Lot 1 may be drawn off.")').waitFor()
    await finger.touch('[data-key=draw]')
    await finger.type('1000', '100')
    await page.locator('text=That leaves 7.1 L of vinegar in the middle.').waitFor()
    await finger.touch('[data-key=keep]')
    await page.locator('h1:has-text("Check lot 2 before you use it.")').waitFor()

    await finger.touch('[data-key=check]')
    await finger.type('2.9', '1.011', '20')
    await finger.touch('[data-key=red-brown]')
    await finger.touch('[data-key=clear]')
    await finger.touch('[data-key=keep]')
    await page.locator('h1:has-text("Lot 2 is ready to use.")').waitFor()
    await keepPicture(page, 'lot-ready')
    expect(await page.locator('tr[data-clause=ph]').getAttribute('data-verdict')).toBe('pass')
    expect(await page.locator('tr[data-clause=acidity]').getAttribute('data-verdict')).toBe('not-measured')
    expect(await page.locator('tr[data-clause=smoke-window]').getAttribute('data-verdict')).toBe('pass')

    await finger.touch('[data-key=use]')
    await page.locator('[data-key=print].answer').waitFor()
    await keepPicture(page, 'use')
    await finger.touch('[data-key=print]')
    expect(await page.evaluate('window.printed')).toBe(1)
    say('a lot', `from the finished firing to the printed sprayer’s card in ${finger.touches} touches`)
    expect(finger.touches).toBeLessThanOrEqual(12)

    await page.emulateMedia({ media: 'print' })
    expect(await page.locator('[data-print=sprayer]').innerText()).toContain('of vinegar')
    expect(await page.locator('main').isVisible()).toBe(false)
    await keepPicture(page, 'sprayer-print')
    const paper = await page.pdf({ format: 'A4', printBackground: true })
    // one sheet: a PDF names its pages in its page tree
    expect(/\/Count 1\b/.test(paper.toString('latin1'))).toBe(true)
    expect(complaints).toEqual([])
  })
})
