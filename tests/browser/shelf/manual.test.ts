import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { problems } from '../../../server/contract/routes.ts'
import { alarmCodes, refusalReasons } from '../../../server/contract/vocabulary.ts'
import { openBrowser } from '../../support/browser.ts'
import { RestSite } from '../../support/rest-site.ts'
import { overflowPx, sizes, violations } from '../open.ts'
import { keepPicture } from '../pictures.ts'

let browser: Browser
let site: RestSite
let address: string
beforeAll(async () => {
  browser = await openBrowser()
  site = new RestSite(Date.UTC(2026, 10, 20, 9))
  address = await site.start()
})
afterAll(async () => {
  await browser.close()
  await site.stop()
})

test.each(['en', 'es', 'th'])(
  'the manual in %s: found from the first page, whole on screen, on a phone and on paper, nothing from outside',
  async (language) => {
    const context = await browser.newContext({ viewport: sizes.tablet, timezoneId: 'UTC' })
    await context.addInitScript((kept) => localStorage.setItem('choices', kept), JSON.stringify({ language }))
    const page = await context.newPage()
    const outside: string[] = []
    page.on('request', (request) => {
      if (!/^(https?|ws):\/\/127\.0\.0\.1|^data:|^blob:/.test(request.url())) outside.push(request.url())
    })
    await page.goto(`${address}#/setup`)
    await page.locator('a[href="#/manual"]').click()
    await page.locator('[data-code=out-of-range]').waitFor()
    const codes = await page.evaluate(() => [...document.querySelectorAll('[data-code]')].map((one) => one.getAttribute('data-code')))
    expect(codes).toEqual(expect.arrayContaining([...Object.keys(problems), ...alarmCodes, ...refusalReasons]))
    await keepPicture(page, `manual-${language}`, { fullPage: true })
    const paper = await page.pdf({ format: 'A4' })
    expect(Number(/\/Count (\d+)/.exec(paper.toString('latin1'))?.[1])).toBeGreaterThan(1)
    await page.setViewportSize(sizes.phone)
    await keepPicture(page, `manual-phone-${language}`, { fullPage: true })
    expect(await overflowPx(page)).toBe(0)
    if (language === 'en') expect(await violations(page)).toEqual([])
    expect(outside).toEqual([])
    await context.close()
  },
)
