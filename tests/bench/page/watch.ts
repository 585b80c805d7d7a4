import type { Page } from 'playwright-core'

/** What a page told of itself; all times ms since 1970. */
export interface Watched {
  redrawsMs: number[]
  /** A probe's number, after the frame that shows it. */
  shown: { role: string; text: string; at: number }[]
  /** A probe's reading as a message brought it. */
  came: { role: string; t: number; text: string; at: number }[]
}

/** In the page: how long a redraw of the curve holds it (from the wiping of the canvas to the next task), what came, and when a new number was painted. */
export function watch(): void {
  const watched: Watched = { redrawsMs: [], shown: [], came: [] }
  Object.assign(window, { watched })
  const now = (): number => performance.timeOrigin + performance.now()
  const { clearRect } = CanvasRenderingContext2D.prototype
  CanvasRenderingContext2D.prototype.clearRect = function (...box) {
    const from = performance.now()
    const channel = new MessageChannel()
    channel.port1.onmessage = () => watched.redrawsMs.push(performance.now() - from)
    channel.port2.postMessage(0)
    clearRect.apply(this, box)
  }
  const Socket = WebSocket
  window.WebSocket = class extends Socket {
    constructor(...address: ConstructorParameters<typeof Socket>) {
      super(...address)
      this.addEventListener('message', ({ data }: MessageEvent<string>) => {
        if (!data.includes('"part":"channels"')) return
        const at = now()
        const { value } = JSON.parse(data) as { value: { role: string; t: number; value: number | null }[] }
        for (const one of value)
          if (one.value !== null) watched.came.push({ role: one.role, t: one.t, text: String(Math.round(one.value)), at })
      })
    }
  }
  addEventListener('DOMContentLoaded', () => {
    new MutationObserver((changes) => {
      const numbers = new Set(changes.map(({ target }) => target.parentElement?.closest<HTMLElement>('[data-role] .number') ?? null))
      for (const number of numbers) {
        if (number === null) continue
        const role = number.closest<HTMLElement>('[data-role]')?.dataset.role ?? ''
        const text = /-?\d+/.exec(number.innerText.replace('−', '-'))?.[0] ?? ''
        requestAnimationFrame(() => setTimeout(() => watched.shown.push({ role, text, at: now() })))
      }
    }).observe(document.body, { subtree: true, characterData: true, childList: true })
  })
}

export const watchedOf = (page: Page): Promise<Watched> => page.evaluate(() => (window as unknown as { watched: Watched }).watched)

/** A page with nothing but the four numbers: what the machine, the browser and the link take by themselves. */
export const barePage = `<!doctype html><body>${['firebox', 'wall', 'outlet', 'smoke']
  .map((role) => `<div data-role="${role}"><p class="number">–</p></div>`)
  .join('')}<script>
  new WebSocket(location.origin.replace('http', 'ws') + '/live').onmessage = ({ data }) => {
    const { part, value } = JSON.parse(data)
    if (part === 'channels')
      for (const one of value) {
        const number = document.querySelector('[data-role=' + one.role + '] .number')
        const text = String(Math.round(one.value))
        if (number && number.textContent !== text) number.firstChild.data = text
      }
  }
</script></body>`
