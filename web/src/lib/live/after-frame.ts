/** A page that lies behind another paints no frames; nothing waits longer than this for one, ms. */
const longestMs = 200

/** Once the next frame stands on the screen: what is not the number itself waits for it. */
export function afterFrame(run: () => void): void {
  let ran = false
  const once = (): void => {
    if (ran) return
    ran = true
    clearTimeout(late)
    run()
  }
  const late = setTimeout(once, longestMs)
  requestAnimationFrame(() => setTimeout(once))
}
