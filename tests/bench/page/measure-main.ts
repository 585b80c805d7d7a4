// Twelve hours of the demo firing through MQTT into the real service, then one page on a browser that is slowed down.
import type { Page } from 'playwright-core'
import { sizes } from '../../browser/open.ts'
import { DemoDay } from '../../moments/demo-day.ts'
import { openBrowser } from '../../support/browser.ts'

/** Reliability 11.1: a live value from node to tablet, 99th percentile. */
const mostMs = 250

const slowed = Number(process.argv[2] ?? '6')
const rounds = 40

interface Watched {
  redrawsMs: number[]
  shownAt: number[]
  /** When a message with new readings was handed to the page. */
  cameAt: number[]
}

/** In the page: how long a redraw of the curve holds it (from the wiping of the canvas to the next task), and when a new number was painted. */
function watch(): void {
  const watched: Watched = { redrawsMs: [], shownAt: [], cameAt: [] }
  Object.assign(window, { watched })
  const { clearRect } = CanvasRenderingContext2D.prototype
  CanvasRenderingContext2D.prototype.clearRect = function (...box) {
    const from = performance.now()
    const channel = new MessageChannel()
    channel.port1.onmessage = () => watched.redrawsMs.push(performance.now() - from)
    channel.port2.postMessage(0)
    clearRect.apply(this, box)
  }
  const Socket = WebSocket
  window.WebSocket = class extends Socket {
    constructor(...address: ConstructorParameters<typeof Socket>) {
      super(...address)
      this.addEventListener('message', ({ data }: MessageEvent<string>) => {
        if (data.includes('"part":"channels"')) watched.cameAt.push(performance.timeOrigin + performance.now())
      })
    }
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
  const inThePage: number[] = []
  for (let round = 0; round < rounds; round += 1) {
    const { shownAt: shownBefore, cameAt: cameBefore } = await watchedOf(page)
    const sentAt = performance.timeOrigin + performance.now()
    await day.playTo(day.now + 10_000)
    await page.waitForTimeout(1500)
    // a reading that rounds to the same whole degrees changes nothing on the screen
    const now = await watchedOf(page)
    const shownAt = now.shownAt[shownBefore.length]
    const cameAt = now.cameAt[cameBefore.length]
    if (shownAt === undefined) continue
    latencies.push(shownAt - sentAt)
    if (cameAt !== undefined) inThePage.push(shownAt - cameAt)
  }
  told('a reading sent by MQTT until its number is painted', latencies)
  const p99 = latencies.toSorted((a, b) => a - b)[Math.floor(latencies.length * 0.99)] ?? Infinity
  if (p99 > mostMs) process.exitCode = 1
  told('of it in the page, from the message to the painted number', inThePage)
  const { redrawsMs } = await watchedOf(page)
  told('a redraw of the curve of twelve hours', redrawsMs)
  const { usedSize } = (await devtools.send('Runtime.getHeapUsage')) as { usedSize: number }
  console.log(`script heap ${(usedSize / 1e6).toFixed(1)} MB`)
} finally {
  await browser.close()
  await day.stop()
}
process.exit(process.exitCode ?? 0)
