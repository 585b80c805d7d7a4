import { appendFileSync } from 'node:fs'

/** A figure that a journey reached, for `npm run journeys`, which prints it; otherwise a test says nothing of itself. */
export function say(what: string, figure: string): void {
  const file = process.env['FIGURES']
  if (file !== undefined) appendFileSync(file, `${what}: ${figure}\n`)
}
