import { readFileSync } from 'node:fs'

const file = `/proc/self/task/${process.pid}/schedstat`

function ofThread(): number | null {
  try {
    const ns = Number(readFileSync(file, 'utf8').split(' ')[0])
    return ns > 0 ? ns / 1e6 : null
  } catch {
    return null
  }
}

/** True where the system tells how long this thread has run: then other programs on the machine do not count. */
export const countsThread = ofThread() !== null

/** Milliseconds that this thread has worked; by the clock on the wall where the system does not tell. */
export const workedMs = (): number => (countsThread ? ofThread() : null) ?? performance.now()
