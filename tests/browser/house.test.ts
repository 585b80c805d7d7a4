import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { openBrowser } from '../support/browser.ts'
import { noon } from './fake/kiln.ts'
import { scenes } from './fake/scenes.ts'
import { open, overflowPx, sizes, violations } from './open.ts'
import type { FakeService } from './fake/service.ts'
import { keepPicture } from './pictures.ts'

// The pages of whoever looks after the box: nodes and their secrets, what was turned away and set aside, and who did what.

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

const keys = [
  { node: 'n1', state: 'paired', at: noon - 86_400_000, fingerprint: '3f9a1c' },
  { node: 'n2', state: 'held', at: noon - 60_000, fingerprint: 'c04d77' },
]
const base64 = (bytes: string | Uint8Array) => Buffer.from(bytes).toString('base64')
function prepare(fake: FakeService): void {
  fake.answers['/api/setup'] = {
    ...{ now: noon, offsetMin: 0, clockSure: true, clock: null, probes: [], kilns: {}, beeps: [], rehearsal: null, heard: [] },
    box: { addresses: ['192.168.4.1'], mqttPort: 1883, root: 'firing', site: 'yard' },
  }
  fake.answers['/api/settings'] = { form: {}, values: { onlyPairedNodes: false }, fixed: [] }
  fake.answers['/api/nodes/keys'] = keys
  fake.answers['/api/nodes/n2/key'] = { node: 'n2', secret: null }
  fake.answers['/api/nodes/n7/key'] = { node: 'n7', secret: 'made-up-secret-of-a-test' }
  fake.answers['/api/nodes/refused'] = {
    reasons: { 'wrong-secret': 3, 'connect-flags': 1, 'other-site': 2, 'unknown-kind': 1 },
    topics: [
      { topic: 'firing/1/elsewhere/n1/readings', reason: 'other-site', times: 2 },
      { topic: `firing/1/yard/hand/<b>${'long'.repeat(30)}</b>`, reason: 'unknown-kind', times: 1 },
    ],
    pushedOut: 4,
  }
  fake.answers['/api/quarantine'] = [
    { at: noon, sender: 'n3', topic: 'firing/1/yard/n3/readings', reason: 'bad-json', payload: base64('{"wall":\u202e<b>21</b>') },
    { at: noon - 5000, sender: '', topic: 'house/tap', reason: 'foreign-topic', payload: base64(Uint8Array.of(0xff, 0xfe, 0x00, 0x41)) },
  ]
  fake.answers['/api/register'] = {
    whole: true,
    lines: [
      { n: 2, at: '2026-03-01T12:00:00.000+00:00', what: 'pairNode', who: 'owner', from: '127.0.0.1' },
      { n: 1, at: '2026-03-01T11:00:00.000+00:00', what: 'pair-refused', who: 'anyone', from: '::ffff:192.168.4.9' },
    ],
  }
}
const said = (page: Page) => page.innerText('main')

test('the owner confirms the secret that a node shows, makes one for a new node and forgets one, each by its own word', async () => {
  const { page, fake, complaints, close } = await open(browser, { view: scenes.waiting, path: '#/setup', prepare })
  await page.click('text=Nodes and their secrets')
  await page.waitForSelector('[data-key="confirm-n2"]')
  expect(await said(page)).toContain('One node waits for your word.')
  expect(await said(page)).toContain('mark of its secret: c04d77')
  // who waits stands first
  expect(await page.locator('main li b.second').first().innerText()).toBe('n2')

  fake.answers['/api/nodes/keys'] = keys.map((key) => ({ ...key, state: 'paired' }))
  await page.click('[data-key="confirm-n2"]')
  await page.waitForSelector('[data-key="confirm-n2"]', { state: 'detached' })
  expect(await said(page)).toContain('Every node is known.')

  await page.fill('input[name="node-name"]', 'Wrong Name')
  expect(await page.isDisabled('[data-key="make-new"]')).toBe(true)
  await page.fill('input[name="node-name"]', 'n7')
  await page.click('[data-key="make-new"]')
  await page.waitForSelector('[data-key="secret-done"]')
  // the topics that were turned away stand below it
  expect(await page.locator('code').first().innerText()).toBe('made-up-secret-of-a-test')
  await page.click('[data-key="secret-done"]')
  expect(await said(page)).not.toContain('made-up-secret-of-a-test')

  // the secret of a paired node is neither replaced nor forgotten by one touch
  await page.click('[data-key="forget-n1"]')
  await page.click('[data-key="no-n1"]')
  await page.click('[data-key="forget-n1"]')
  await page.click('[data-key="yes-n1"]')
  await page.waitForTimeout(200)
  expect(fake.posts).toEqual([
    { path: '/api/nodes/n2/key', body: { way: 'confirm' } },
    { path: '/api/nodes/n7/key', body: { way: 'make' } },
    { path: '/api/nodes/n1/key', body: null },
  ])
  expect(complaints).toEqual([])
  await close()
})

test('what was turned away is counted by reason; what was set aside is shown as it came, as text and never as markup', async () => {
  const { page, close } = await open(browser, { view: scenes.waiting, path: '#/setup/secrets', prepare })
  await page.waitForSelector('[data-list="set-aside"] li')
  expect(await page.innerText('[data-list="refused"]')).toContain('a wrong secret, or none where one is asked: 3')
  expect(await page.innerText('[data-list="refused"]')).toContain('MQTT that breaks the standard (connect-flags): 1')
  const strays = await page.innerText('[data-list="strays"]')
  expect(strays).toContain('firing/1/elsewhere/n1/readings · the topic names another place: 2')
  expect(strays).toContain('<b>long')
  expect(strays).toContain('the last word of the topic is not known: 1')
  for (const summary of await page.locator('summary').all()) await summary.click()
  const raw = await page.locator('[data-list="set-aside"] pre').allInnerTexts()
  expect(raw).toEqual(['{"wall":\ufffd<b>21</b>', 'ff fe 00 41'])
  expect(await page.innerText('[data-list="set-aside"]')).toContain('the text is not JSON')
  await close()
})

test('who did what stands there with place and time, and a broken chain is the headline', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting, path: '#/setup/register', prepare })
  await page.waitForSelector('main ol li')
  expect(await said(page)).toContain('owner: gave or confirmed a node’s secret')
  expect(await said(page)).toContain('anybody: tried to pair with a wrong code')
  expect(await said(page)).toContain('from 192.168.4.9')
  fake.answers['/api/register'] = { whole: false, lines: [] }
  await page.reload()
  await page.waitForSelector('h1:has-text("changed from outside")')
  await close()
})

test.each(['en', 'es', 'th'] as const)('%s: both pages fit a phone and a tablet, and axe finds nothing', async (language) => {
  const look = language === 'es' ? 'night' : 'day'
  const { page, complaints, close } = await open(browser, { view: scenes.waiting, language, look, path: '#/setup', prepare })
  for (const what of ['secrets', 'register']) {
    await page.evaluate((to) => (location.hash = to), `#/setup/${what}`)
    await page.waitForSelector(what === 'secrets' ? '[data-list="set-aside"] li' : 'main ol li')
    for (const size of ['phone', 'tablet'] as const) {
      await page.setViewportSize(sizes[size])
      expect(await overflowPx(page), `${what} ${size}`).toBe(0)
      expect(await violations(page), `${what} ${size}`).toEqual([])
      await keepPicture(page, `${what}-${language}-${look}-${size}`, { fullPage: true })
    }
  }
  expect(complaints).toEqual([])
  await close()
})
