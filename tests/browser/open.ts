import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import type { KilnView } from '../../server/contract/live.ts'
import { FakeService } from './fake/service.ts'

/** Screens that the page is made for, CSS pixels. */
export const sizes = {
  tablet: { width: 1024, height: 768 },
  portrait: { width: 768, height: 1024 },
  phone: { width: 360, height: 640 },
  wide: { width: 1280, height: 800 },
} as const
export type Size = keyof typeof sizes

export interface Opened {
  page: Page
  context: BrowserContext
  fake: FakeService
  /** What the browser complained of: script errors and whatever the content-security policy refused. */
  complaints: string[]
  close(): Promise<void>
}

export interface How {
  view: KilnView | null
  size?: Size
  look?: 'day' | 'night'
  language?: 'en' | 'es' | 'th'
  path?: string
  prepare?: (fake: FakeService) => void
  /** What the page keeps for an idle moment never comes. */
  neverIdle?: boolean
}

/** The built page in a real browser before a kiln that stands still. */
export async function open(browser: Browser, how: How): Promise<Opened> {
  const fake = new FakeService(how.view)
  how.prepare?.(fake)
  const address = await fake.start()
  const context = await browser.newContext({ viewport: sizes[how.size ?? 'tablet'], hasTouch: true, locale: 'en-GB', timezoneId: 'UTC' })
  const choices = JSON.stringify({ look: how.look ?? 'day', language: how.language ?? 'en' })
  await context.addInitScript((kept) => localStorage.setItem('choices', kept), choices)
  if (how.neverIdle) await context.addInitScript(() => Object.assign(window, { requestIdleCallback: () => 0 }))
  const page = await context.newPage()
  const complaints: string[] = []
  page.on('pageerror', (error) => complaints.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error' && !/WebSocket|ERR_/.test(message.text())) complaints.push(`${message.text()} ${message.location().url}`)
  })
  await page.goto(address + (how.path ?? ''))
  await page.waitForSelector('h1')
  await page.evaluate(() => document.fonts.ready)
  return {
    page,
    context,
    fake,
    complaints,
    close: async () => {
      await context.close()
      await fake.stop()
    },
  }
}

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/** Violations of WCAG 2.2 A and AA and of axe's own good practice, as short lines. */
export async function violations(page: Page): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axe)
  return page.evaluate(async () => {
    interface Found {
      violations: { id: string; nodes: { html: string; failureSummary?: string }[] }[]
    }
    const { axe } = window as unknown as { axe: { run(where: Document): Promise<Found> } }
    const found = await axe.run(document)
    return found.violations.flatMap(({ id, nodes }) =>
      nodes.map((node) => `${id}: ${node.html.slice(0, 160)} ${node.failureSummary ?? ''}`),
    )
  })
}

/** No part of the page reaches beyond its right edge. */
export function overflowPx(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
}
