/** Runs once when the page has nothing better to do, a moment after what it stands for was asked for. Returns how to forget it. */
export function whenIdle(run: () => void): () => void {
  let waiting: number | undefined
  const after = setTimeout(() => {
    // not every browser has it
    if ('requestIdleCallback' in window) waiting = window.requestIdleCallback(run, { timeout: 1500 })
    else run()
  }, 100)
  return () => {
    clearTimeout(after)
    if (waiting !== undefined) window.cancelIdleCallback(waiting)
  }
}
