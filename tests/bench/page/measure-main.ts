// Twelve hours of the demo firing through MQTT into the real service, then one page on a browser that is slowed down.
import type { Page } from 'playwright-core'
import { sizes } from '../../browser/open.ts'
import { DemoDay } from '../../moments/demo-day.ts'
import { openBrowser } from '../../support/browser.ts'

const slowed = Number(process.argv[2] ?? '6')
const rounds = 40

interface Watched {
  redrawsMs: number[]
  shownAt: number[]
}

/** In the page: how long a redraw of the curve holds it (from the wiping of the canvas to the next task), and when a new number was painted. */
function watch(): void {
  const watched: Watched = { redrawsMs: [], shownAt: [] }
  Object.assign(window, { watched })
  const { clearRect } = CanvasRenderingContext2D.prototype
  CanvasRenderingContext2D.prototype.clearRect = function (...box) {
    const from = performance.now()
    const channel = new MessageChannel()
    channel.port1.onmessage = () => watched.redrawsMs.push(performance.now() - from)
    channel.port2.postMessage(0)
    clearRect.apply(this, box)
  }
  addEventListener('DOMContentLoaded', () => {
    new MutationObserver((changes) => {
      const number = changes.some(({ target }) => target.parentElement?.closest('[data-role] .number'))
      // after the frame that shows it
      if (number) requestAnimationFrame(() => setTimeout(() => watched.shownAt.push(performance.timeOrigin + performance.now())))
    }).observe(document.body, { subtree: true, characterData: true, childList: true })
  })
}

const watchedOf = (page: Page): Promise<Watched> => page.evaluate(() => (window as unknown as { watched: Watched }).watched)

function told(name: string, values: readonly number[]): void {
  const sorted = [...values].sort((a, b) => a - b)
  const at = (share: number): string => (sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN).toFixed(0)
  console.log(`${name}: median ${at(0.5)} ms, 95 % ${at(0.95)} ms, most ${at(1)} ms (${sorted.length} times)`)
}

const day = await DemoDay.start()
const browser = await openBrowser()
try {
  await day.playTo(Date.parse('2026-03-14T18:00:00Z'))
  const context = await browser.newContext({ viewport: sizes.tablet, hasTouch: true })
  await context.addInitScript(watch)
  const page = await context.newPage()
  const devtools = await context.newCDPSession(page)
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowed })
  await page.goto(day.app.url)
  await page.waitForSelector('.u-wrap canvas')
  await page.waitForTimeout(3000)
  const painted = await page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? NaN)
  console.log(`browser slowed ${slowed} times; first paint ${painted.toFixed(0)} ms after the page was asked for`)
  const latencies: number[] = []
  for (let round = 0; round < rounds; round += 1) {
    const before = (await watchedOf(page)).shownAt.length
    const sentAt = performance.timeOrigin + performance.now()
    await day.playTo(day.now + 10_000)
    await page.waitForTimeout(1500)
    // a reading that rounds to the same whole degrees changes nothing on the screen
    const shownAt = (await watchedOf(page)).shownAt[before]
    if (shownAt !== undefined) latencies.push(shownAt - sentAt)
  }
  told('a reading sent by MQTT until its number is painted', latencies)
  const { redrawsMs } = await watchedOf(page)
  told('a redraw of the curve of twelve hours', redrawsMs)
  const { usedSize } = (await devtools.send('Runtime.getHeapUsage')) as { usedSize: number }
  console.log(`script heap ${(usedSize / 1e6).toFixed(1)} MB`)
} finally {
  await browser.close()
  await day.stop()
}
process.exit(0)
