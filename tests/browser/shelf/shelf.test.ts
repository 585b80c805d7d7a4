import { readFileSync } from 'node:fs'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { makeKilnFold } from '../../../server/domain/firing/fold.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { corrected } from '../../../server/recordings/in/again.ts'
import { linesOf, lookAt } from '../../../server/recordings/in/look.ts'
import { shelve } from '../../../server/recordings/in/shelve.ts'
import { readRecording } from '../../../server/recordings/read.ts'
import { openBrowser } from '../../support/browser.ts'
import { storyHeader, storyLines } from '../../support/firing-story.ts'
import { RestSite } from '../../support/rest-site.ts'
import { overflowPx, sizes, violations } from '../open.ts'
import { keepPicture } from '../pictures.ts'

const demo = readFileSync(new URL('../../../server/simulator/demo/demo-firing.jsonl.gz', import.meta.url))

// by rules alone, which is faster: the page is what is looked at here
const folds = { intake: intakeFold, kiln: makeKilnFold<never>(null) }

let browser: Browser
let site: RestSite
let page: Page
let address: string
/** Ids of the demo firing, of its morning with the drum wall read 25 °C higher, and of a short one. */
let ids: string[]
const complaints: string[] = []

async function onShelf(bytes: Uint8Array, name: string): Promise<string> {
  const { file, preview } = await lookAt(site.store, bytes, name, null)
  if (!file) throw new Error(JSON.stringify(preview.problems))
  await shelve(site.store, folds, file)
  return file.id
}

beforeAll(async () => {
  browser = await openBrowser()
  site = new RestSite(Date.UTC(2026, 10, 20, 9))
  address = await site.start()
  const recording = readRecording(demo)
  const [channel = ''] = Object.entries(recording.header.roles ?? {}).find(([, role]) => role === 'wall') ?? []
  // the first hours are enough, and are worked out faster
  const morning = {
    ...recording,
    lines: recording.lines.filter((line) => Date.parse(line.at) < Date.parse(recording.lines[0]?.at ?? '') + 7 * 3_600_000),
  }
  const warmer = corrected(morning, { roles: {}, calibration: { [channel]: { gain: 1, offset: 25 } } })
  ids = [
    await onShelf(demo, 'demo.jsonl.gz'),
    await onShelf(Buffer.from(linesOf({ ...warmer, header: { ...warmer.header, title: 'Warmer wall' } })), 'warmer.jsonl'),
    await onShelf(Buffer.from(linesOf({ header: storyHeader, lines: storyLines(1) })), 'story.jsonl'),
  ]
  page = await browser.newPage({ viewport: sizes.tablet, timezoneId: 'UTC', locale: 'en-GB' })
  page.on('pageerror', (error) => complaints.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error' && !/WebSocket|ERR_|404/.test(message.text())) complaints.push(message.text())
  })
})
afterAll(async () => {
  await browser.close()
  await site.stop()
})

async function open(where: string): Promise<void> {
  await page.goto('about:blank')
  await page.goto(`${address}#/${where}`)
  await page.locator('main h1').waitFor()
  await page.waitForTimeout(300)
}
const press = (key: string): Promise<void> => page.locator(`[data-key="${key}"]`).first().click()
const textOf = (selector: string): Promise<string> =>
  page.evaluate(
    (where) => [...document.querySelectorAll<HTMLElement>(where)].map((one) => one.innerText.replace(/\s+/g, ' ')).join(' | '),
    selector,
  )
const shot = (name: string): Promise<void> => keepPicture(page, name, { fullPage: true })

describe('a journey over the shelf', () => {
  test('one firing: curve closer by a key, calls given and done, a note with who and when', async () => {
    await open('shelf')
    // four bottles of 4.5, 4.5, 4.5 and 4.1 L and 17.9 kg, as the demo's own log names them
    expect(await textOf(`main a[href*="${ids[0] ?? ''}"] .lasted`)).toMatch(/^17\.6 L · 17\.9 kg of charcoal .* unloaded · lasted \d+ h/)
    await shot('list')
    await page.locator(`main a[href*="${ids[0] ?? ''}"]`).click()
    await page.locator('h2:has-text("Calls, as given and as done")').waitFor()
    await press('closer')
    await page.locator('.chart canvas').waitFor()
    await shot('one')
    await press('every')
    expect(await textOf('main table')).toMatch(/Start collecting given \d\d:\d\d done \d\d:\d\d \d+ min later/)
    await page.locator('textarea[name=note]').fill('=HYPERLINK("x") lid was late')
    await page.locator('input[name=name]').fill('A. N.')
    await press('keep-note')
    await page.locator('[data-part=notes] li p:has-text("lid was late")').waitFor()
    expect(await textOf('[data-part=notes] li')).toMatch(/A. N., owner, 20 Nov 2026 09:00/)
    await press('weigh')
    await page.locator('[data-part=notes] form input').nth(3).fill('16')
    await page.locator('[data-part=notes] form input').nth(4).fill('17')
    await press('keep-figures')
    await page.locator('p[role=alert]:has-text("Fines are a part of the charcoal")').waitFor()
    await page.locator('[data-part=notes] form input').nth(4).fill('1')
    await press('keep-figures')
    await page.locator('[data-result] td:has-text("16.0 kg")').waitFor()
    expect(await textOf('[data-part=notes] li')).toContain('Charcoal 16.0 kg, of that fines 1.0 kg')
  })

  test('two compared: lines told apart by dash, weight and number, differences in a table', async () => {
    await open('shelf')
    await press('choose')
    for (const title of ['Warmer wall', 'Demo data: an']) await page.locator(`li:has-text("${title}") input`).first().check()
    await press('compare')
    await page.locator('h1:has-text("2 firings side by side")').waitFor()
    await press('curve-wall')
    const strokes = await page.evaluate(() =>
      [...document.querySelectorAll('path[data-line]')].map(
        (one) => `${one.getAttribute('stroke-width')} ${one.getAttribute('stroke-dasharray')}`,
      ),
    )
    expect(new Set(strokes).size).toBe(2)
    const walls = await page.locator('table tr:has(th:has-text("Hottest drum wall"))').innerText()
    const [, one, other, sign, apart] = /(\d+) °C\s+(\d+) °C\s+([+−]) (\d+) °C/.exec(walls) ?? []
    expect(sign === '+' ? Number(apart) : -Number(apart), walls).toBe(Number(other) - Number(one))
    await shot('compared')
    await press('align-clock')
    await press('align-vinegar')
    await press('closer')
    await shot('compared-vinegar')
  })

  test('a table with a bad row is told with its line, put right by a choice, looked at and kept', async () => {
    await open('shelf/take-in')
    const rows = Array.from({ length: 40 }, (_, minute) => `${String(minute)},${String(20 + minute * 8)},${String(300 + minute)}`)
    const csv = (text: string) => ({ name: 'old log.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })
    await page.setInputFiles('input[name=file]', csv(['minutes,wall,x', ...rows, '40,warm,1'].join('\n')))
    await page.locator('[data-problem=bad-start]').waitFor()
    await page.locator('input[name=start]').fill('2026-03-01T07:00')
    await page.locator('input[name=start]').blur()
    await page.locator('[data-problem=bad-number]:has-text("Line 42")').waitFor()
    await shot('take-in-bad')
    expect(await page.locator('[data-key=yes]').count()).toBe(0)
    await page.setInputFiles('input[name=file]', csv(['minutes,wall,x', ...rows].join('\n')))
    await page.locator('select[name=column-2]').selectOption('firebox')
    await page.locator('input[name=start]').fill('2026-03-01T07:00')
    await page.locator('input[name=start]').blur()
    await page.locator('main p:has-text("40 lines of readings")').waitFor()
    await shot('take-in')
    const before = (await site.store.firings()).length
    await press('yes')
    await page.locator('h1:has-text("old log, 1 Mar 2026")').waitFor()
    expect(await site.store.firings()).toHaveLength(before + 1)
  })

  test('probes put right afterwards: another firing beside the first', async () => {
    await open(`shelf/again~${ids[2] ?? ''}`)
    await press('go')
    await page.locator('p[role=alert]:has-text("Change a place or enter an offset first.")').waitFor()
    await page.locator('input[name=offset-outlet]').fill('3,5')
    await shot('again')
    await press('go')
    await page.locator('a:has-text("Worked out anew; the first one")').waitFor({ timeout: 60_000 })
  })

  test('the report is one to two pages on paper', async () => {
    await open(`shelf/report~${ids[0] ?? ''}`)
    await page.locator('[data-print=report] svg').waitFor()
    await page.emulateMedia({ media: 'print' })
    const paper = await page.pdf({ format: 'A4' })
    await page.emulateMedia({ media: 'screen' })
    expect(Number(/\/Count (\d+)/.exec(paper.toString('latin1'))?.[1])).toBeLessThanOrEqual(2)
    await shot('report')
  })

  test('what the report says of the time from lighting to the end is what lies between them', async () => {
    const said = await page.locator('[data-print=report] > p').allInnerTexts()
    const [, lit = '', ended = '', hours, minutes] =
      /Lit (.+? \d\d:\d\d), ended (.+? \d\d:\d\d) \((?:(\d+) h )?(\d+) min\)/.exec(said.join(' ').replace(/\s+/g, ' ')) ?? []
    const lasted = Number(hours ?? 0) * 60 + Number(minutes)
    // both are told to the minute
    expect(Math.abs((Date.parse(`${ended} UTC`) - Date.parse(`${lit} UTC`)) / 60_000 - lasted)).toBeLessThanOrEqual(1)
  })

  test('no complaint of the browser', () => {
    expect(complaints).toEqual([])
  })
})

describe('on a phone, by day and by night, in three languages', () => {
  const parts = ['', '/ONE', '/compare~ONE~TWO', '/report~ONE', '/take-in', '/again~ONE']
  const all = ['en', 'es', 'th'].flatMap((language) => parts.map((part) => [language, part] as const))
  test.each(all)('%s: shelf%s', async (language, part) => {
    const where = `shelf${part.replace('ONE', ids[0] ?? '').replace('TWO', ids[1] ?? '')}`
    await page.setViewportSize(sizes.phone)
    await page.goto(address)
    await page.evaluate((kept) => localStorage.setItem('choices', kept), JSON.stringify({ language }))
    await open(where)
    expect(await overflowPx(page)).toBe(0)
    await shot(`phone-${language}-${String(parts.indexOf(part))}`)
    for (const look of language === 'en' ? ['day', 'night'] : []) {
      await page.evaluate(`document.documentElement.dataset.look = '${look}'`)
      expect(await violations(page), look).toEqual([])
    }
  })
})
