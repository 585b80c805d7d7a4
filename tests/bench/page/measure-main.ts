// Twelve hours of the demo firing through MQTT into the real service, then one page on a browser that is slowed down; beside it a page with nothing but the numbers.
import type { Browser, Page } from 'playwright-core'
import { sizes } from '../../browser/open.ts'
import { DemoDay } from '../../moments/demo-day.ts'
import { openBrowser } from '../../support/browser.ts'
import { streamed, type Sent } from './live-stream.ts'
import { barePage, watch, watchedOf, type Watched } from './watch.ts'

/** The figure of the live screen: a reading on it so soon after it reached the service, for 99 of 100. */
const mostMs = 100

const slowed = Number(process.argv[2] ?? '6')
const seconds = Number(process.argv[3] ?? '90')
/** Collecting, when all parts of the screen move, and twelve hours after lighting. */
const times = ['2026-03-14T10:00:00Z', '2026-03-14T18:00:00Z']

async function opened(browser: Browser, url: string, bare: boolean): Promise<Page> {
  const context = await browser.newContext({ viewport: sizes.tablet, hasTouch: true })
  await context.addInitScript(watch)
  const page = await context.newPage()
  const devtools = await context.newCDPSession(page)
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowed })
  if (bare) await page.route('**/bare', (route) => route.fulfill({ contentType: 'text/html', body: barePage }))
  await page.goto(bare ? `${url}/bare` : url)
  if (!bare) await page.waitForSelector('.u-wrap canvas')
  await page.waitForTimeout(3000)
  return page
}

/** A reading whose number stood there already, or was overtaken by the next one, is not counted. */
function latencies(sent: readonly Sent[], { came, shown }: Watched): { whole: number[]; inPage: number[] } {
  const whole: number[] = []
  const inPage: number[] = []
  for (const { role, t, at } of sent) {
    const heard = came.find((one) => one.role === role && one.t === t)
    const seen =
      heard && shown.find((one) => one.role === role && one.text === heard.text && one.at >= heard.at && one.at < heard.at + 1000)
    if (!heard || !seen) continue
    whole.push(seen.at - at)
    inPage.push(seen.at - heard.at)
  }
  return { whole, inPage }
}

const quantile = (values: readonly number[], share: number): number => {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN
}

function told(name: string, values: readonly number[]): void {
  const at = (share: number): string => quantile(values, share).toFixed(0)
  console.log(`${name}: median ${at(0.5)} ms, 95 % ${at(0.95)} ms, 99 % ${at(0.99)} ms, most ${at(1)} ms (${values.length} times)`)
}

async function measured(browser: Browser, day: DemoDay, bare: boolean): Promise<Page> {
  const page = await opened(browser, day.app.url, bare)
  const sent = await streamed(day, bare ? seconds / 2 : seconds)
  const watched = await watchedOf(page)
  const { whole, inPage } = latencies(sent, watched)
  told(`${bare ? 'a bare page' : 'the live page'}, a reading sent by MQTT until its number is painted`, whole)
  told('  of it in the page', inPage)
  if (!bare) {
    told('  a redraw of the curve', watched.redrawsMs)
    if (whole.length < sent.length / 2 || quantile(whole, 0.99) > mostMs) process.exitCode = 1
  }
  return page
}

const day = await DemoDay.start()
const browser = await openBrowser()
try {
  console.log(`browser slowed ${slowed} times, each of four probes once a second; a number within ${mostMs} ms for 99 of 100`)
  for (const time of times) {
    await day.playTo(Date.parse(time))
    console.log(`\nat ${time}`)
    await (await measured(browser, day, true)).context().close()
    const page = await measured(browser, day, false)
    const painted = await page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? NaN)
    const devtools = await page.context().newCDPSession(page)
    const { usedSize } = (await devtools.send('Runtime.getHeapUsage')) as { usedSize: number }
    console.log(`  first paint ${painted.toFixed(0)} ms after the page was asked for; script heap ${(usedSize / 1e6).toFixed(1)} MB`)
    await page.context().close()
  }
} finally {
  await browser.close()
  await day.stop()
}
process.exit(process.exitCode ?? 0)
