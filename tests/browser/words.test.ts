import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openBrowser } from '../support/browser.ts'
import { noon } from './fake/kiln.ts'
import { scenes } from './fake/scenes.ts'
import { open, overflowPx } from './open.ts'

let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser.close())

const textOf = (selector: string) =>
  [...document.querySelectorAll<HTMLElement>(selector)].map((one) => one.innerText.replace(/\s+/g, ' ').trim())

/** What a good neighbour would say at this moment; the screen says the same. */
const neighbour = [
  { at: 'before-lighting', command: 'Ready.', until: 'Load the drum, go through the list, then light it.' },
  { at: 'waiting', command: 'Wait.', until: 'Start collecting likely between 09:10 and 09:50.' },
  { at: 'start-due', command: 'Start collecting.', until: 'Put the bottle under the drip now.' },
  { at: 'collecting', command: 'Collect.', until: 'Take the bottle away 09:40 to 10:55, or when the drip turns dark.' },
  { at: 'drip-turning', command: 'Stop now.', until: 'Take the bottle away now. Tar is coming.' },
  { at: 'sealing', command: 'Seal it.', until: 'Mouth first, chimney last. Stand aside.' },
  { at: 'night', command: 'Keep it shut.', until: 'Not before 00:00 tomorrow. I will call.' },
  { at: 'morning', command: 'Try a small gap.', until: 'Stand aside, clay ready, watch for 30 minutes.' },
] as const

describe('at eight moments', () => {
  test.each(neighbour)('$at: $command', async ({ at, command, until }) => {
    const { page, close } = await open(browser, { view: scenes[at] })
    expect(await page.evaluate(textOf, 'h1, .until')).toEqual([command, until])
    await close()
  })
})

test('numbers, rates and ranges on one screen agree', async () => {
  const { page, close } = await open(browser, { view: scenes.collecting })
  const [why] = await page.evaluate(textOf, '.why')
  const [smoke] = await page.evaluate(textOf, '[data-role="smoke"] .number')
  expect(why).toContain(`Smoke about ${smoke?.replace('~', '').replace('°C', ' °C')}`)
  await close()
})

test('what is estimated wears its sign and the word', async () => {
  const { page, close } = await open(browser, { view: scenes['three-probes'] })
  expect(await page.evaluate(textOf, '[data-role="smoke"] .number, [data-role="smoke"] .label .full')).toEqual([
    '~70°C',
    'smoke, estimated · ± 6 °C',
  ])
  await close()
})

test('late is struck through, lost and faulty show no number', async () => {
  const { page, close } = await open(browser, { view: scenes['probes-bad'] })
  expect(await page.evaluate(textOf, '[data-role="wall"] s')).toEqual(['160'])
  expect(await page.evaluate(textOf, '[data-role="wall"] .label .full')).toEqual([expect.stringMatching(/^drum wall · late, 4\d s$/)])
  expect(await page.evaluate(textOf, '[data-role="firebox"] .number')).toEqual(['– no number'])
  expect(await page.evaluate(textOf, '[data-role="firebox"] .label .full')).toEqual(['firebox · wire broken or unplugged'])
  expect(await page.evaluate(textOf, '[data-role="outlet"] .label .full')).toEqual([expect.stringContaining('doubtful')])
  await close()
})

test('an alarm says first what to do, then why, and is not mended by hushing', async () => {
  const { page, fake, close } = await open(browser, { view: scenes['cloths-dry'] })
  expect(await page.evaluate(textOf, '.bar .first')).toEqual(['Warning: Wet the cloths now.'])
  expect(await page.evaluate(textOf, '.bar .words p:last-child')).toEqual([
    'Much vapour is getting away. Outlet 71 °C, over 55 °C for 1 min.',
  ])
  expect(await page.locator('[data-key="wet-condenser"]').evaluate((key) => key.classList.contains('answer'))).toBe(true)
  await page.tap('[data-key="hush"]')
  await expect.poll(() => fake.acts.map((act) => act.act)).toEqual([{ action: 'acknowledge', alarm: 'condenser-hot' }])
  fake.part('alarms', [{ ...scenes['cloths-dry'].alarms[0], state: 'acknowledged' }])
  await expect.poll(() => page.evaluate(textOf, '.bar .words b')).toEqual(['Hushed, not mended.'])
  await close()
})

test('a new number is on the screen at once', async () => {
  const { page, fake, close } = await open(browser, { view: scenes.waiting })
  const channels = scenes.waiting.channels.map((one) => (one.role === 'outlet' ? { ...one, value: 47.6, t: noon } : one))
  fake.part('channels', channels)
  await expect.poll(() => page.evaluate(textOf, '[data-role="outlet"] .number')).toEqual(['48°C'])
  await close()
})

test.each([
  ['es', 'Espere.', 'Empezar a recoger, probable entre 09:10 y 09:50.'],
  ['th', 'รอก่อน', 'เริ่มเก็บ น่าจะระหว่าง 09:10 ถึง 09:50 น.'],
] as const)('%s', async (language, command, until) => {
  const { page, complaints, close } = await open(browser, { view: scenes.waiting, language })
  await expect.poll(() => page.evaluate(textOf, 'h1, .until')).toEqual([command, until])
  expect(await page.evaluate(() => document.documentElement.lang)).toBe(language)
  if (language === 'th') expect(await page.evaluate(() => document.fonts.check('800 68px "Noto Sans Thai"', 'รอ'))).toBe(true)
  expect(complaints).toEqual([])
  await page.setViewportSize({ width: 360, height: 640 })
  expect(await overflowPx(page)).toBe(0)
  await close()
})

test('°F and gallons by choice, on every number', async () => {
  const { page, context, close } = await open(browser, { view: scenes.waiting })
  await context.addInitScript(() => localStorage.setItem('choices', JSON.stringify({ temperature: 'F' })))
  await page.reload()
  await expect.poll(() => page.evaluate(textOf, '[data-role="wall"] .number')).toEqual(['320°F'])
  expect((await page.evaluate(textOf, '.why'))[0]).toMatch(/^Smoke 156 °F, climbing 40 °F an hour\. The wood is drying/)
  await close()
})

test.each([
  // sunset on 14 October at the equator, longitude 0: about 17:48 UTC (equation of time +14 min; almanac, from memory); half an hour
  // in hand and 8.6 h for a slow firing lead to 08:42, said as 08:40; 15 degrees east everything is an hour earlier
  [0, 'Light by 08:40: then it is sealed before dark'],
  [15, 'Too late today: by 07:40, or sealing falls into the dark'],
])('before lighting the hour to light by stands beside the command: longitude %d', async (longitude, told) => {
  const { page, close } = await open(browser, {
    view: scenes['before-lighting'],
    prepare: (fake) => {
      fake.answers['/api/documents/plan'] = [{ id: 'place', document: { latitude: 0, longitude } }]
      fake.answers['/api/firings'] = []
    },
  })
  await expect.poll(() => page.evaluate(textOf, '.sentence a')).toEqual([told])
  await close()
})
