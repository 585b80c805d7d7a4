// Plays the demo day through the real service and takes the ten pictures; writes MOMENTS.md beside them.
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { sizes } from '../browser/open.ts'
import { openBrowser } from '../support/browser.ts'
import { readPng, writePng } from '../support/png.ts'
import { DemoDay } from './demo-day.ts'
import { ten, type Moment } from './ten.ts'

const [folder = '', only = ''] = process.argv.slice(2)

interface Said {
  command: string
  until: string
  why: string
}

async function picture(browser: Browser, day: DemoDay, moment: Moment): Promise<Said> {
  const size = sizes[moment.size ?? 'tablet']
  const context = await browser.newContext({ viewport: size, hasTouch: true, locale: 'en-GB', timezoneId: 'UTC' })
  const choices = JSON.stringify({ look: moment.look ?? 'day', language: 'en' })
  await context.addInitScript((kept) => localStorage.setItem('choices', kept), choices)
  const page = await context.newPage()
  await page.goto(day.app.url)
  await page.waitForSelector('.u-wrap canvas')
  await page.evaluate(() => document.fonts.ready)
  // a touch anywhere lets the page sound
  await page.touchscreen.tap(size.width / 2, 4)
  await page.waitForTimeout(400)
  writeFileSync(join(folder, `${moment.name}.png`), writePng(readPng(await page.screenshot({ animations: 'disabled' }))))
  const said = await saidBy(page)
  console.log(`\n== ${moment.name} ${new Date(day.now).toISOString()}\n${(await page.locator('body').innerText()).replaceAll('\n', ' | ')}`)
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
      `![${moment.title}](${moment.name}.png)`,
    ].join('\n\n'),
  )
  const head = [
    '# Ten moments of a firing',
    'The demo firing (made-up numbers), sent through MQTT into the real service, by somebody who does what the screen says. Beside each picture stands what a good neighbour would say at that moment; the screen was changed where it differed. Made anew by `npm run moments`; do not edit.',
  ].join('\n\n')
  return `${[head, ...parts].join('\n\n')}\n`
}

mkdirSync(folder, { recursive: true })
const day = await DemoDay.start()
const browser = await openBrowser()
const rows: Parameters<typeof page>[0] = []
try {
  for (const moment of ten) {
    await moment.reach(day)
    // the service speaks to its pages at most every 20 ms
    await new Promise((resolve) => setTimeout(resolve, 200))
    if (only !== '' && !only.split(',').includes(moment.name)) continue
    rows.push({ moment, time: new Date(day.now).toISOString().slice(11, 16), said: await picture(browser, day, moment) })
  }
  if (only === '') writeFileSync(join(folder, 'MOMENTS.md'), page(rows))
} finally {
  await browser.close()
  await day.stop()
}
process.exit(0)
