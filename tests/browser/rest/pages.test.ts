import axe from 'axe-core'
import type { Browser, Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { LotEntry } from '../../../server/contract/lots.ts'
import { openBrowser } from '../../support/browser.ts'
import { bottle, demijohn, entry, lifeOfALot } from '../../support/lot-story.ts'
import { RestSite } from '../../support/rest-site.ts'
import { keepPicture } from '../pictures.ts'

describe('pages for lots, uses and plans', () => {
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
    site = new RestSite(Date.parse('2027-01-14T09:00:00'))
    address = await site.start()
    page = await browser.newPage({ viewport: { width: 1024, height: 768 } })
    complaints.length = 0
    page.on('pageerror', (error) => complaints.push(error.message))
  })
  afterEach(async () => {
    expect(complaints).toEqual([])
    await page.close()
    await site.stop()
  })

  /** Puts entries into the book by the door that the page uses; their dates were named by a person. */
  async function written(entries: readonly LotEntry[]): Promise<void> {
    for (const { id, event, date, doneAt } of entries) {
      const answer = await fetch(`${address}api/lots/entries`, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ id, event, date, doneAt }),
      })
      expect(answer.status).toBe(201)
    }
  }
  async function open(where: string): Promise<void> {
    await page.goto(`${address}#/${where}`)
    await page.locator('main h1').waitFor()
    await page.evaluate('window.print = () => { window.printed = (window.printed ?? 0) + 1 }')
  }
  const press = (key: string): Promise<void> => page.locator(`[data-key="${key}"]`).first().click()
  const fill = (name: string, value: string): Promise<void> => page.locator(`input[name=${name}]`).first().fill(value)
  async function onePage(name: string): Promise<void> {
    await page.emulateMedia({ media: 'print' })
    const paper = await page.pdf({ format: 'A4' })
    expect(paper.toString('latin1')).toMatch(/\/Count 1\b/)
    await keepPicture(page, `${name}-print`)
    await page.emulateMedia({ media: 'screen' })
  }

  it.each([
    ['a tank of nothing', 'tank', 'tank', '0', 'The tank is empty. Enter how many litres of water go in, from 0.1 to 100000 L.'],
    ['a ratio upside down', 'rate', 'ratio', '500:1', 'Water is the larger part. Write it as 1:500.'],
    ['a ratio that does not say which way', 'rate', 'ratio', '500', 'Write it with its unit, such as: 1:500, 500x, 0.2 %.'],
  ])('says what to enter for %s', async (_, key, name, value, sentence) => {
    await written(lifeOfALot)
    await open('use/8')
    await press(key)
    await fill(name, value)
    await press('keep')
    await page.locator(`em:has-text("${sentence}")`).waitFor()
  })

  it('says first that no lot is ready, where none is', async () => {
    await open('use')
    await page.locator('h1:has-text("No lot is ready to use.")').waitFor()
    expect(await page.locator('.second').innerText()).toContain('rested, been drawn off and checked')
    for (const key of ['mixed', 'print']) {
      await press(key)
      await page.locator('[role=status]:text-is("Nothing was booked or printed.")').waitFor()
    }
    expect(await page.evaluate('window.printed')).toBeUndefined()
  })

  it('refuses 1 : 20 on leaves with its reason and prints no card', async () => {
    await written(lifeOfALot)
    await open('use/8')
    await press('rate')
    await fill('ratio', '1:20')
    await press('keep')
    await page.locator('h1:has-text("Refused: stronger than 100-fold kills living plants. Enter 1:100 or weaker.")').waitFor()
    await press('print')
    expect(await page.evaluate('window.printed')).toBeUndefined()
    expect(await page.locator('[data-print=sprayer]').count()).toBe(0)
  })

  it('prints no card for a lot that still rests, and says until when', async () => {
    await written(lifeOfALot.slice(0, 1))
    site.now = Date.parse('2026-12-14T09:00:00')
    await open('use/7')
    await page.locator('[data-problem=lot-unrested]:has-text("The lot rests until 2027-01-12. Choose a rested lot.")').waitFor()
    expect(await page.locator('[data-print=sprayer]').count()).toBe(0)
  })

  it('says what to enter for pH 15 and for a density in kg/m³', async () => {
    await written(lifeOfALot)
    await open('lots/8')
    await press('check')
    await fill('ph', '15')
    await fill('density', '1011')
    await press('keep')
    await page.locator('em:has-text("That is too much. Enter at most 14")').waitFor()
    await page.locator('em:has-text("That is in kg/m³. Enter 1.011 (g/mL).")').waitFor()
  })

  it('counts no rest while the clock is in doubt', async () => {
    await written(lifeOfALot.slice(0, 1))
    site.clockSure = false
    await open('lots/7')
    await page.locator('h1:has-text("Lot 7: the date is in doubt.")').waitFor()
    expect(await page.locator('main svg text').allInnerTexts()).not.toContain('today')
  })

  it('takes an entry back by a later one and keeps both to be read', async () => {
    await written([...lifeOfALot, entry('g', '2027-01-14', { what: 'give', lot: '8', volumeMl: 1000 })])
    await open('lots/8')
    await page.locator('svg text:has-text("6 L")').waitFor()
    await press('book')
    await page.locator('li:has-text("given") [data-key=undo]').click()
    await page.locator('li.old:has-text("given")').waitFor()
    await page.locator('li:has-text("taken back")').waitFor()
    await press('leave')
    await page.locator('svg text:has-text("7 L")').waitFor()
    // the drawing can not be taken back: what it gave was checked and used afterwards
    await open('lots/7')
    await press('book')
    await page.locator('li:has-text("filled") [data-key=undo]').click()
    await page.locator('p[role=alert]:has-text("Later entries took more than that. Correct those first.")').waitFor()
  })

  it('corrects a mistyped number and an unknown day by a later entry', async () => {
    site.clockSure = false
    const [first] = lifeOfALot
    if (first === undefined) throw new Error('the story is empty')
    const answer = await fetch(`${address}api/lots/entries`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ id: first.id, event: first.event }),
    })
    expect(answer.status).toBe(201)
    site.clockSure = true
    await open('lots/7')
    await page.locator('h1:has-text("Lot 7: the date is in doubt.")').waitFor()
    await press('book')
    await press('correct')
    await page.locator('input[name=date]').fill('2026-12-01')
    await page.locator('input[name=volumeMl]').nth(1).fill('2.2')
    await press('keep')
    await page.locator('li.old:has-text("filled 8.2 L")').waitFor()
    await page.locator('li:has-text("filled 6.2 L")').waitFor()
    await press('leave')
    await page.locator('h1:has-text("Leave lot 7 alone until 1 March.")').waitFor()
    await page.locator('svg text:has-text("6.2 L")').waitFor()
  })

  it('draws the three layers at the heights that were measured', async () => {
    await written(lifeOfALot.slice(0, 2))
    await open('lots/7')
    const height = async (name: string): Promise<number> => Number(await page.locator(`main rect.${name}`).getAttribute('height'))
    expect((await height('vinegar')) / (await height('tar'))).toBeCloseTo(7.1, 1)
    expect((await height('tar')) / 242).toBeCloseTo(1000 / 10_000, 2)
    await keepPicture(page, 'lot-layers')
  })

  it('lists the lots with their marks, and prints a label on one sheet', async () => {
    await written(lifeOfALot)
    await open('lots')
    expect(await page.locator('a[data-lot]').count()).toBe(2)
    await keepPicture(page, 'lots')
    await open('lots/8')
    await press('label')
    await page.locator('[data-print=label] img').waitFor()
    expect(
      await page.locator('[data-print=label] img').evaluate((image) => (image as unknown as { naturalWidth: number }).naturalWidth),
    ).toBeGreaterThan(20)
    expect(await page.locator('[data-print=label]').innerText()).toContain('Not a drink.')
    await onePage('label')
    await keepPicture(page, 'label')
  })

  it('splits a lot and joins two, and the younger one decides the rest', async () => {
    const second = entry('h', '2026-12-20', {
      what: 'fill',
      lot: '9',
      firing: null,
      bottles: [bottle(1, 1500)],
      vessel: demijohn,
      wood: 'mango',
    })
    await written([...lifeOfALot.slice(0, 1), second])
    await open('lots/7')
    await press('move')
    await press('part')
    await fill('volumeMl', '9')
    await press('keep')
    await page.locator('[role=alert]:has-text("There are only 8.2 L. Enter that or less.")').waitFor()
    await fill('volumeMl', '3')
    await press('keep')
    await page.locator('h1:has-text("Lot 10 may be drawn off.")').waitFor()
    await press('move')
    await press('join')
    await page.locator('[data-key="9"]').click()
    await press('keep')
    await page.locator('h1:has-text("Leave lot 11 alone until 20 March.")').waitFor()
    await page.locator('svg text:has-text("4.5 L")').waitFor()
  })

  it('turns heights into layers, and a titration into an acidity', async () => {
    await written(lifeOfALot)
    await open('lots/7')
    await press('layers')
    await press('heights')
    // 100 mm across: 7.854 mL for each mm
    for (const [name, value] of [
      ['insideDiameterMm', '100'],
      ['tarTopMm', '5'],
      ['vinegarTopMm', '12'],
      ['oilTopMm', '11'],
    ] as const) {
      await fill(name, value)
    }
    await press('keep')
    await page.locator('[role=alert]:has-text("That is too little. Enter 12")').waitFor()
    await fill('oilTopMm', '20')
    await press('keep')
    await page.locator('svg text:has-text("55 mL")').waitFor()
    await open('lots/8')
    await press('check')
    await fill('sample', '5')
    await fill('baseMl', '35')
    expect(await page.locator('input[name=acidityPct]').inputValue()).toBe('4.2')
  })

  it('says what came of a firing against what was expected, on both bases', async () => {
    await site.finishedFiring('f-demo', Date.parse('2027-01-10T05:00:00'))
    await open('lots')
    await press('charcoal')
    await expect.poll(() => page.locator('input[name=massG]').inputValue()).toBe('15.1')
    await press('keep')
    // 15.1 kg from 70 kg at 30 %: 21.6 % as loaded, 30.8 % of 49 kg of dry wood; without 0.9 kg of fines 20.3 and 29.0
    await page.locator('[data-yield=within]').waitFor()
    expect(await page.locator('[data-yield]').innerText()).toContain(
      '21.6 % of the wood as loaded, 30.8 % of the dry wood; without fines 20.3 % and 29.0 %',
    )
    await open('lots')
    await press('fromFiring')
    await page.locator('input[name=volumeMl]').nth(1).waitFor()
    // the vessel is taken large enough; one that is too small is told once, beside it
    const offered = await page.locator('input[name=capacityMl]').inputValue()
    await fill('capacityMl', '1')
    await press('keep')
    await page.locator('#capacityMl-problem:has-text("That is too little. Enter ")').waitFor()
    expect(await page.locator('[role=alert]').count()).toBe(1)
    await fill('capacityMl', offered)
    await fill('wood', 'eucalyptus')
    await press('keep')
    await page.locator('[data-yield=within]').waitFor()
  })

  it('weighs charcoal and keeps it outside for a day', async () => {
    await open('lots')
    await press('charcoal')
    await fill('massG', '15.1')
    await fill('finesG', '0.9')
    await press('keep')
    await page.locator('h1:has-text("Spread lot 1 out in the open.")').waitFor()
    await press('air')
    await page.locator('h1:has-text("Lot 1 stays outside until")').waitFor()
    await keepPicture(page, 'charcoal')
  })

  it('says by when to light, once it knows the place, and remembers the place', async () => {
    await open('plan')
    await page.locator('h1:has-text("Say where the kiln is")').waitFor()
    await fill('latitude', '95')
    await fill('longitude', '100')
    await press('keep')
    await page.locator('em:has-text("That is too much. Enter at most 90")').waitFor()
    await fill('latitude', '15')
    await press('keep')
    await page.locator('h1:has-text("Light by")').waitFor()
    await keepPicture(page, 'light-by')
    await page.reload()
    await page.locator('h1:has-text("Light by")').waitFor()
  })

  it('expects of a charge what drum kilns gave, and tells the two bases apart', async () => {
    await open('plan/charge')
    await fill('massKg', '100')
    await fill('asIs', '100')
    await fill('ovenDry', '80')
    await page.locator('text=20.0 % of the whole = 25.0 % of the dry wood').waitFor()
    await keepPicture(page, 'charge')
    await fill('ovenDry', '120')
    await page.locator('em:has-text("Dried wood weighs less. Enter the dry weight second.")').waitFor()
  })

  it('plans back from litres to firings and wood', async () => {
    await written(lifeOfALot)
    await open('plan/back')
    await page.locator('h1:has-text("3 firings are needed.")').waitFor()
    await keepPicture(page, 'plan-back')
    await fill('wantedMl', '5')
    await page.locator('h1:has-text("The store holds enough.")').waitFor()
  })

  it.each([
    ['plan/list', 'list'],
    ['plan/card', 'dead'],
  ])('prints %s on one sheet', async (where, name) => {
    await open(where)
    await press('print')
    expect(await page.evaluate('window.printed')).toBe(1)
    await keepPicture(page, name)
    await onePage(name)
  })

  it.each(['lots', 'lots/7', 'lots/8', 'use/8', 'plan', 'plan/charge', 'plan/back', 'plan/list', 'plan/card'])(
    '%s fits a phone, has no flaw that axe knows, by day and by night',
    async (where) => {
      await written(lifeOfALot)
      await page.setViewportSize({ width: 360, height: 640 })
      await open(where)
      await page.waitForTimeout(100)
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360)
      for (const look of ['day', 'night']) {
        await page.evaluate(`document.documentElement.dataset.look = '${look}'`)
        if (!(await page.evaluate('"axe" in window'))) await page.evaluate(axe.source)
        const found = (await page.evaluate("axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa'] })")) as {
          violations: { id: string; nodes: { html: string }[] }[]
        }
        expect(found.violations.map(({ id, nodes }) => [look, id, nodes[0]?.html])).toEqual([])
      }
    },
  )

  it('speaks Spanish whole', async () => {
    await page.addInitScript("localStorage.setItem('choices', JSON.stringify({ language: 'es' }))")
    await written(lifeOfALot.slice(0, 1))
    site.now = Date.parse('2026-12-14T09:00:00')
    await open('lots/7')
    await page.locator('h1:has-text("Deje quieto el lote 7 hasta el 12 de enero.")').waitFor()
    await open('plan/card')
    await page.locator('h1:has-text("Cuando la pantalla está muerta")').waitFor()
  })
})
