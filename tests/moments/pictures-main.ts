// Plays the demo day through the real service and takes the pictures of its moments, by tablet and phone, by day and night; looks at each at four sizes for what reaches beyond the edge, hides a key, speaks against itself or fails axe; writes MOMENTS.md beside them.
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { overflowPx, sizes, violations, type Size } from '../browser/open.ts'
import { openBrowser } from '../support/browser.ts'
import { readPng, writePng } from '../support/png.ts'
import { DemoDay } from './demo-day.ts'
import { contradictions } from '../browser/arithmetic.ts'
import { moments, type Moment } from './moments.ts'

const [folder = '', only = ''] = process.argv.slice(2)

interface Said {
  command: string
  until: string
  why: string
}

const ways = [
  { size: 'tablet', look: 'day', suffix: '' },
  { size: 'tablet', look: 'night', suffix: '-night' },
  { size: 'phone', look: 'day', suffix: '-phone' },
  { size: 'phone', look: 'night', suffix: '-phone-night' },
] as const

/** What is wrong with this page at any of the four sizes. */
async function wrongWith(page: Page): Promise<string[]> {
  const wrong = (await violations(page)).map((one) => `axe: ${one}`)
  for (const size of Object.keys(sizes) as Size[]) {
    await page.setViewportSize(sizes[size])
    if ((await overflowPx(page)) > 0) wrong.push(`${size}: reaches beyond the edge`)
    for (const one of await contradictions(page)) wrong.push(`${size}: ${one}`)
    const lowest = await page.evaluate(() =>
      Math.max(...[...document.querySelectorAll('.keys button')].map((key) => key.getBoundingClientRect().bottom)),
    )
    if (lowest > sizes[size].height)
      wrong.push(`${size}: a key stands ${Math.round(lowest - sizes[size].height)} px below the first screenful`)
  }
  return wrong
}

async function picture(browser: Browser, day: DemoDay, moment: Moment, way: (typeof ways)[number]): Promise<Said> {
  const size = sizes[way.size]
  const context = await browser.newContext({ viewport: size, hasTouch: true, locale: 'en-GB', timezoneId: 'UTC' })
  const choices = JSON.stringify({ look: way.look, language: 'en' })
  await context.addInitScript((kept) => localStorage.setItem('choices', kept), choices)
  const page = await context.newPage()
  await page.goto(day.app.url)
  await page.waitForSelector('.u-wrap canvas', { timeout: 120_000 })
  await page.evaluate(() => document.fonts.ready)
  // a touch anywhere lets the page sound
  await page.touchscreen.tap(size.width / 2, 4)
  await page.waitForTimeout(400)
  writeFileSync(join(folder, `${moment.name}${way.suffix}.png`), writePng(readPng(await page.screenshot({ animations: 'disabled' }))))
  const said = await saidBy(page)
  for (const one of await wrongWith(page)) {
    console.log(`WRONG ${moment.name} ${way.look}: ${one}`)
    process.exitCode = 1
  }
  if (way.suffix === '')
    console.log(
      `\n== ${moment.name} ${new Date(day.now).toISOString()}\n${(await page.locator('body').innerText()).replaceAll('\n', ' | ')}`,
    )
  await context.close()
  return said
}

async function saidBy(page: Page): Promise<Said> {
  const text = (of: string): Promise<string> => page.locator(of).innerText()
  return { command: await text('h1'), until: await text('.until'), why: (await page.locator('.why').allInnerTexts()).join(' ') }
}

function page(rows: { moment: Moment; time: string; said: Said }[]): string {
  const parts = rows.map(({ moment, time, said }) =>
    [
      `## ${moment.title}, ${time}`,
      `A good neighbour: _${moment.neighbour}_`,
      `The screen: **${said.command}** ${said.until} ${said.why}`,
      `![${moment.title}](${moment.name}.png) ![by night](${moment.name}-night.png)`,
      `![on a phone](${moment.name}-phone.png) ![on a phone by night](${moment.name}-phone-night.png)`,
    ].join('\n\n'),
  )
  const head = [
    '# Moments of a firing',
    'The demo firing (made-up numbers), sent through MQTT into the real service, by somebody who does what the screen says. Beside each picture stands what a good neighbour would say at that moment; the screen was changed where it differed. Made anew by `npm run moments`; do not edit.',
  ].join('\n\n')
  return `${[head, ...parts].join('\n\n')}\n`
}

mkdirSync(folder, { recursive: true })
const day = await DemoDay.start()
const browser = await openBrowser()
const rows: Parameters<typeof page>[0] = []
try {
  for (const moment of moments) {
    await moment.reach(day)
    // kiln time runs far ahead of the disk here: a read waits for all that was written; the service speaks to its pages at most every 20 ms
    await day.app.store.firings()
    await new Promise((resolve) => setTimeout(resolve, 200))
    if (only !== '' && !only.split(',').includes(moment.name)) continue
    const time = new Date(day.now).toISOString().slice(11, 16)
    const said: Said[] = []
    for (const way of ways) said.push(await picture(browser, day, moment, way))
    if (said[0]) rows.push({ moment, time, said: said[0] })
    if (only === '') writeFileSync(join(folder, 'MOMENTS.md'), page(rows))
  }
} finally {
  await browser.close()
  await day.stop()
}
process.exit()
