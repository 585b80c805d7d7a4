import type { Page } from 'playwright-core'

const minutesOf = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3))
/** Minutes from one clock time to the next time the other is read, 0 to 1439. */
const until = (from: string, to: string): number => (minutesOf(to) - minutesOf(from) + 1440) % 1440

interface Read {
  text: string
  now: string
  /** What the large numbers show, by the names that the sentences use. */
  shown: Record<string, string>
}

/** What an English live page says, as it can be seen. */
function read(page: Page): Promise<Read> {
  return page.evaluate(() => {
    const textOf = (of: string): string =>
      [...document.querySelectorAll<HTMLElement>(of)].map((one) => one.innerText.replace(/\s+/g, ' ').trim()).join(' ')
    const names: Record<string, string> = {
      firebox: 'Firebox',
      wall: 'Drum wall',
      smoke: 'Smoke',
      outlet: 'Outlet',
      core: 'Core',
    }
    const shown: Record<string, string> = {}
    for (const one of document.querySelectorAll<HTMLElement>('[data-role]')) {
      const name = names[one.dataset.role ?? '']
      const number = /[−-]?\d+/.exec(one.querySelector<HTMLElement>('.number')?.innerText ?? '')
      if (name && number) shown[name] = number[0].replace('−', '-')
    }
    return { text: textOf('.sentence, .bar .words, .face'), now: textOf('header time'), shown }
  })
}

/** What on this screen speaks against something else on it; empty where all agrees. */
export async function contradictions(page: Page): Promise<string[]> {
  const { text, now, shown } = await read(page)
  const found: string[] = []
  const words = text.replaceAll('−', '-')
  // a number told in words is the number that stands large
  for (const [, name = '', value = ''] of words.matchAll(/(?:^|[.!] |: )(Firebox|Drum wall|Smoke|Outlet|Core)(?: about)? (-?\d+) °C/g)) {
    if (shown[name] !== undefined && shown[name] !== value) found.push(`${name} ${value} in words, ${shown[name]} in the picture`)
  }
  // a range to come ends after it begins, and not before now; twelve hours are further than any range of a day's call
  for (const [range, from = '', to = ''] of words.matchAll(/(\d\d:\d\d) (?:and|to) (\d\d:\d\d)/g)) {
    if (until(from, to) > 720) found.push(`${range} ends before it begins`)
    if (now !== '' && until(now, to) > 1080) found.push(`${range} is over at ${now}`)
  }
  for (const [whole, when = ''] of words.matchAll(/likely before (\d\d:\d\d)[.;]/g)) {
    if (now !== '' && until(now, when) > 1080) found.push(`${whole} stands at ${now}`)
  }
  for (const [whole, when = ''] of words.matchAll(/Not before (\d\d:\d\d)\./g)) {
    if (now !== '' && until(now, when) > 1080) found.push(`${whole} stands at ${now}`)
  }
  // shares of one drip
  const shares = /drip is (\d+) % water and (\d+) % tar/.exec(words)
  if (shares && Number(shares[1]) + Number(shares[2]) > 100) found.push(shares[0])
  // what is over a limit is more than it, what is under is less
  for (const [whole, value = '', side, limit = ''] of words.matchAll(/(-?\d+) °C, (over|under) (-?\d+) °C/g)) {
    if (side === 'over' ? Number(value) < Number(limit) : Number(value) > Number(limit)) found.push(whole)
  }
  for (const [whole, low = '', high = ''] of words.matchAll(/(\d+(?:\.\d+)?) to (\d+(?:\.\d+)?) L/g)) {
    if (Number(low) > Number(high)) found.push(whole)
  }
  // what runs an hour, over the time since the bottle was put there, lies between the bounds of what is in it
  const bottle = /bottle \d+ · (?:(\d+) h )?(\d+) min · ~ ([\d.]+) L an hour ~ ([\d.]+) to ([\d.]+) of/.exec(text)
  if (bottle) {
    const [hours, minutes, rate, low, high] = bottle.slice(1).map((one) => Number(one ?? 0)) as [number, number, number, number, number]
    const run = rate * (hours + minutes / 60)
    // the rate of now is not that of the whole time
    if (run < low / 2 || run > 2 * high) found.push(`${bottle[0]}: ${run.toFixed(1)} L ran`)
  }
  return found
}
