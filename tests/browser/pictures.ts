import type { Page } from 'playwright-core'

const folder = process.env['PICTURES']

/** The page as it stands, for whoever changes it: `PICTURES=FOLDER npx vitest run …`. No check, and dear: without a folder none is taken. */
export async function keepPicture(page: Page, name: string, { fullPage = false } = {}): Promise<void> {
  if (folder !== undefined) await page.screenshot({ path: `${folder}/${name}.png`, fullPage })
}
