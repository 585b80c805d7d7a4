import type { Ms } from '../../../../server/contract/fold.ts'
import { leftPx, rightPxOf } from './plot-places.ts'

interface View {
  from: Ms
  to: Ms
}

/** A finger that moved less than this meant a point of the curve, px. */
const stillPx = 8

/**
 * Fingers on the curve: one moves it sideways, two stretch it in time. Up and down stays the page's own (`touch-action: pan-y`), and
 * every key that does the same stands beside it.
 */
export function fingers(box: HTMLElement, view: () => View, move: (from: Ms, to: Ms) => void): () => void {
  const down = new Map<number, number>()
  let began: { view: View; at: Map<number, number> } | null = null
  let moving = false

  const begin = (): void => {
    began = { view: view(), at: new Map(down) }
  }
  const onDown = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse' && event.button !== 0) return
    down.set(event.pointerId, event.clientX)
    moving = false
    begin()
  }
  const onMove = (event: PointerEvent): void => {
    const start = began?.at.get(event.pointerId)
    if (!began || start === undefined) return
    down.set(event.pointerId, event.clientX)
    if (!moving && down.size === 1 && Math.abs(event.clientX - start) < stillPx) return
    if (!moving) box.setPointerCapture(event.pointerId)
    moving = true
    const { left, width } = box.getBoundingClientRect()
    const plot = { left: left + leftPx, width: width - leftPx - rightPxOf(width) }
    const next = follow(began.view, [...began.at.values()], [...down.values()], plot)
    if (next) move(next.from, next.to)
  }
  const onUp = (event: PointerEvent): void => {
    down.delete(event.pointerId)
    moving = false
    begin()
  }

  box.addEventListener('pointerdown', onDown)
  box.addEventListener('pointermove', onMove)
  box.addEventListener('pointerup', onUp)
  box.addEventListener('pointercancel', onUp)
  return () => {
    box.removeEventListener('pointerdown', onDown)
    box.removeEventListener('pointermove', onMove)
    box.removeEventListener('pointerup', onUp)
    box.removeEventListener('pointercancel', onUp)
  }
}

/** The view in which what lay under the fingers when they came lies under them now; places in px from the left of the screen. */
export function follow(view: View, came: readonly number[], are: readonly number[], plot: { left: number; width: number }): View | null {
  const span = view.to - view.from
  const timeAt = (x: number): Ms => view.from + (span * (x - plot.left)) / plot.width
  const [came1, came2] = came
  const [now1, now2] = are
  if (came1 === undefined || now1 === undefined || plot.width <= 0) return null
  if (came2 === undefined || now2 === undefined) {
    const by = (span * (came1 - now1)) / plot.width
    return { from: view.from + by, to: view.to + by }
  }
  const apart = now2 - now1
  // crossed or touching fingers say nothing
  if (Math.abs(apart) < 10 || Math.sign(apart) !== Math.sign(came2 - came1)) return null
  const msPerPx = (timeAt(came2) - timeAt(came1)) / apart
  const from = timeAt(came1) - (now1 - plot.left) * msPerPx
  return { from, to: from + plot.width * msPerPx }
}
