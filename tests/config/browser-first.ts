import { serveBrowser } from '../support/browser.ts'

/** One browser for every file that looks at a page: starting it costs more than most of them. Files take windows of their own in it. */
export default async function browserFirst(): Promise<() => Promise<void>> {
  const { address, stop } = await serveBrowser()
  process.env['BROWSER_AT'] = address
  return stop
}
