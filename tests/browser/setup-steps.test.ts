import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { defaultKilnConfig } from '../../server/contract/kiln-defaults.ts'
import type { SetupAnswer } from '../../server/contract/setup.ts'
import { settingsForm, settingsSchema } from '../../server/settings/schema.ts'
import { openBrowser } from '../support/browser.ts'
import { noon } from './fake/kiln.ts'
import { scenes } from './fake/scenes.ts'
import { open, overflowPx, sizes, violations } from './open.ts'
import { keepPicture } from './pictures.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

const probe = (name: string, value: number) => ({
  ...{ channel: `yard/n1/${name}`, value, quality: 'good' as const, t: noon },
  trail: [[noon - 5000, value - 4] as [number, number], [noon, value] as [number, number]],
})
const answer: SetupAnswer = {
  now: noon,
  offsetMin: 60,
  clockSure: true,
  clock: { right: false, at: noon },
  box: { addresses: ['192.168.4.1'], mqttPort: 1884, root: 'firing', site: 'yard' },
  probes: [
    probe('a-long-name-of-a-probe', 24),
    { ...probe('wall', 20), trail: [[noon, 20]] },
    { ...probe('outlet', 0), value: null, quality: 'fault:open' },
  ],
  kilns: {
    'kiln-1': {
      ...defaultKilnConfig(),
      ...{ name: 'Demo kiln', sign: 'bird', roles: { 'yard/n1/wall': 'wall', 'yard/n1/outlet': 'outlet' } },
      calibration: { 'yard/n1/wall': { gain: 1.0042, offset: -0.5 } },
    },
  },
  beeps: [{ node: 'yard/buzzer', askedAt: noon, answer: 'waiting' }],
  rehearsal: null,
  heard: [
    { what: 'sound', tablet: true, buzzer: null, told: null, at: noon },
    { what: 'fire', tablet: true, buzzer: false, told: 'fire-dying', at: noon },
  ],
}
const learnt = { ...defaultKilnConfig(), name: 'Demo kiln', prior: { firings: 3, unknowns: { draught: { mean: 0.4, sd: 0.4 } } } }
const steps = ['', 'language', 'clock', 'kiln', 'nodes', 'roles', 'calibration', 'sound', 'tablet', 'rehearsal', 'settings']

test.each(['en', 'es', 'th'] as const)(
  '%s: every step fits a phone and a tablet, and axe finds nothing, by day and by night',
  async (language) => {
    const look = language === 'es' ? 'night' : 'day'
    const { page, complaints, close } = await open(browser, {
      ...{ view: scenes.waiting, language, look, path: '#/setup' },
      prepare: (fake) => {
        fake.answers['/api/setup'] = answer
        fake.answers['/api/settings'] = { form: settingsForm(), values: settingsSchema.parse({}), fixed: ['port'] }
        fake.answers['/api/settings/changes'] = [{ path: 'kilns.0.name', from: '', to: 'Demo kiln', at: noon, by: 'owner' }]
        fake.answers['/api/people'] = [{ id: '1', person: 'operator', label: '', pairedAt: noon }]
      },
    })
    for (const step of steps) {
      await page.evaluate((to) => (location.hash = to), `#/setup${step === '' ? '' : `/${step}`}`)
      await page.waitForSelector(step === 'settings' ? 'main h2' : step === '' ? 'main ol' : '[data-key="step-next"]')
      await page.waitForTimeout(100)
      for (const size of ['phone', 'tablet'] as const) {
        await page.setViewportSize(sizes[size])
        expect(await overflowPx(page), `${step} ${size}`).toBe(0)
        expect(await violations(page), `${step} ${size}`).toEqual([])
      }
    }
    expect(complaints).toEqual([])
    await close()
  },
)

test.each(['en', 'es', 'th'] as const)(
  '%s: what was learnt of a kiln stands on its page, and is forgotten in two touches',
  async (language) => {
    const look = language === 'es' ? 'night' : 'day'
    const { page, fake, complaints, close } = await open(browser, {
      ...{ view: scenes.waiting, language, look, path: '#/setup/kiln' },
      prepare: (service) => (service.answers['/api/setup'] = { ...answer, kilns: { 'kiln-1': learnt } }),
    })
    await page.waitForSelector('[data-key="kiln-changed"]')
    expect(await page.textContent('main')).toContain('3')
    expect(await page.locator('[data-key="forget-probe"]').count()).toBe(0)
    await page.click('[data-key="kiln-changed"]')
    for (const size of ['phone', 'tablet'] as const) {
      await page.setViewportSize(sizes[size])
      expect(await overflowPx(page), size).toBe(0)
      expect(await violations(page), size).toEqual([])
      await keepPicture(page, `learnt-${language}-${size}`, { fullPage: true })
    }
    await page.click('[data-key="forget-probe"]')
    await expect.poll(() => fake.posts).toContainEqual({ path: '/api/setup/kilns/kiln-1/forget', body: { what: 'probe' } })
    expect(complaints).toEqual([])
    await close()
  },
)
