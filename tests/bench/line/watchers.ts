import type { Browser } from 'playwright-core'
import { WebSocket } from 'ws'
import type { ChannelView } from '../../../server/contract/live.ts'
import { sizes } from '../../browser/open.ts'
import { epochMs, watchedRoles, type Sent, type WatchedRole } from './nodes.ts'

/** How long each sent value took until it was seen; one that was never seen is counted. */
export class Latencies {
  readonly tookMs: number[] = []
  missed = 0
  private readonly waiting = new Map<WatchedRole, Sent[]>()

  sent(sent: Sent): void {
    this.waiting.set(sent.role, [...(this.waiting.get(sent.role) ?? []), sent])
  }

  /** A value seen again is no news; one that is seen after a newer one can not be. */
  seen(role: WatchedRole, value: number, at: number): void {
    const queue = this.waiting.get(role) ?? []
    const index = queue.findIndex((sent) => sent.value === value && sent.at <= at)
    if (index < 0) return
    this.tookMs.push(at - (queue[index]?.at ?? at))
    this.missed += index
    this.waiting.set(role, queue.slice(index + 1))
  }

  /** What is still on its way when nothing more is sent. */
  end(): void {
    for (const queue of this.waiting.values()) this.missed += queue.length
    this.waiting.clear()
  }

  percentile(share: number): number {
    const sorted = [...this.tookMs].sort((a, b) => a - b)
    return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN
  }
}

/** What a message of the socket says of a watched role. */
export type Told = (text: string) => { role: string; value: number | null }[]

export const toldByService: Told = (text) => {
  const message = JSON.parse(text) as { type: string; part?: string; value?: ChannelView[] }
  return message.type === 'kiln' && message.part === 'channels' ? (message.value ?? []) : []
}
export const toldByBareParts: Told = (text) => [JSON.parse(text) as { role: string; value: number }]

const roleOf = (role: string): WatchedRole | undefined => watchedRoles.find((one) => one === role)

/** A socket of its own, beside the page's. @returns how it is closed */
export async function watchSocket(url: string, told: Told, latencies: Latencies): Promise<() => void> {
  const socket = new WebSocket(url)
  socket.on('message', (data) => {
    const at = epochMs()
    for (const { role, value } of told(String(data as Buffer))) {
      const watched = roleOf(role)
      if (watched && value !== null) latencies.seen(watched, value, at)
    }
  })
  await new Promise<void>((resolve, reject) => socket.once('open', resolve).once('error', reject))
  return () => socket.terminate()
}

interface Shown {
  role: string
  text: string
  /** After the frame that shows it. */
  at: number
}

/** In the page: every change of a number, when it had been painted. */
function observe(): void {
  const shown: Shown[] = []
  Object.assign(window, { shown })
  addEventListener('DOMContentLoaded', () => {
    new MutationObserver((changes) => {
      const touched = new Set<Element>()
      for (const { target } of changes) {
        const number = (target instanceof Element ? target : target.parentElement)?.closest('[data-role] .number')
        if (number) touched.add(number)
      }
      for (const number of touched) {
        const role = number.closest<HTMLElement>('[data-role]')?.dataset['role'] ?? ''
        const text = number.textContent ?? ''
        requestAnimationFrame(() => setTimeout(() => shown.push({ role, text, at: performance.timeOrigin + performance.now() })))
      }
    }).observe(document.body, { subtree: true, characterData: true, childList: true })
  })
}

/** Opens the page in a real browser. @returns how what it has shown is collected */
export async function watchPage(
  browser: Browser,
  url: string,
  latencies: Latencies,
): Promise<{ collect(): Promise<void>; close(): Promise<void> }> {
  const context = await browser.newContext({ viewport: sizes.tablet, hasTouch: true })
  await context.addInitScript(observe)
  const page = await context.newPage()
  await page.goto(url)
  await page.waitForSelector('[data-role] .number')
  return {
    async collect() {
      for (const { role, text, at } of await page.evaluate(() => (window as unknown as { shown: Shown[] }).shown.splice(0))) {
        const watched = roleOf(role)
        const value = Number.parseFloat(text)
        if (watched && Number.isFinite(value)) latencies.seen(watched, value, at)
      }
    },
    close: () => context.close(),
  }
}
