import type { ForecastView } from '../../../../server/contract/live.ts'

/** Share of the height that the firebox has for itself at the top, and of the others below it; between them is air. */
const fireShare = 0.2
const mainShare = 0.74

/** Bottom and top of an axis so that `0..most` fills the lower share. */
export function mainRange(most: number): [number, number] {
  return [0, most / mainShare]
}

/** The same so that `0..most` of the firebox fills the strip at the top. */
export function fireRange(most: number): [number, number] {
  return [most - most / fireShare, most]
}

/** The highest of some lines, up to the next hundred, at least 200. */
export function mostOf(lines: readonly (readonly (number | null)[])[], least = 200): number {
  let most = least
  for (const line of lines) for (const value of line) if (value !== null && value > most) most = value
  return Math.ceil(most / 100) * 100
}

export function mostOfForecast(forecast: ForecastView | null): number {
  return Math.max(0, ...(forecast?.smoke.map((point) => point.high) ?? []))
}

/** Least space between two ticks, px. */
const tickPx = 21

/** Four ticks or so, fewer in a low box, at round numbers of the unit that is shown; returned in °C. */
export function ticksOf(mostC: number, unit: 'C' | 'F', heightPx = Infinity): number[] {
  const count = Math.min(4.6, Math.max(1, (heightPx * mainShare) / tickPx))
  const most = unit === 'F' ? mostC * 1.8 + 32 : mostC
  const step = [50, 100, 200, 250, 500].find((size) => most / size <= count) ?? 500
  const ticks: number[] = []
  for (let value = step; value <= most; value += step) ticks.push(unit === 'F' ? (value - 32) / 1.8 : value)
  return ticks
}

/** Pushes labels apart so that none touches its neighbour; keeps their order and the bounds. */
export function spread(wanted: readonly number[], apart: number, top: number, bottom: number): number[] {
  const order = wanted.map((y, index) => ({ y, index })).sort((a, b) => a.y - b.y)
  for (let round = 0; round < 20; round += 1)
    for (let i = 1; i < order.length; i += 1) {
      const upper = order[i - 1]
      const lower = order[i]
      if (!upper || !lower || lower.y - upper.y >= apart) continue
      const middle = (lower.y + upper.y) / 2
      upper.y = middle - apart / 2
      lower.y = middle + apart / 2
    }
  let least = top
  for (const label of order) {
    label.y = Math.max(label.y, least)
    least = label.y + apart
  }
  let most = bottom
  for (const label of [...order].reverse()) {
    label.y = Math.min(label.y, most)
    most = label.y - apart
  }
  const placed: number[] = []
  for (const label of order) placed[label.index] = label.y
  return placed
}

/** Where the name of a line begins: after its end, or before it where there is no room up to `rightEdge`. All px. */
export function besideEnd(end: number, width: number, gap: number, rightEdge: number): number {
  return end + gap + width <= rightEdge ? end + gap : end - gap - width
}
