import { windowsOf } from './score.ts'
import type { Watched } from './watch.ts'

const [width, height, left, bottom] = [720, 260, 40, 24]

/** One firing as an SVG: true smoke solid, estimated dashed, wall thin; best window shaded, the window called as a bar below. */
export function draw(w: Watched, score: number): string {
  const hours = Math.max(1, ...w.curve.map((p) => p.hour))
  const top = Math.max(300, ...w.curve.map((p) => Math.max(p.smoke, p.estimated, p.wall || 0)))
  const x = (h: number): string => (left + (h / hours) * (width - left - 8)).toFixed(1)
  const y = (c: number): string => (height - bottom - (c / top) * (height - bottom - 10)).toFixed(1)
  const line = (pick: (p: Watched['curve'][number]) => number, style: string): string =>
    `<polyline fill="none" ${style} points="${w.curve
      .filter((p) => Number.isFinite(pick(p)))
      .map((p) => `${x(p.hour)},${y(pick(p))}`)
      .join(' ')}"/>`
  const { start, stop } = w.rows
  const best =
    start !== null && stop !== null
      ? `<rect x="${x(start)}" y="10" width="${Number(x(stop)) - Number(x(start))}" height="${height - bottom - 10}" fill="#e9e5da"/>`
      : ''
  const bar = windowsOf(w.calls)
    .map(([from, to]) => {
      const wide = Math.max(1, Number(x(Math.min(to, hours))) - Number(x(from)))
      return `<rect x="${x(from)}" y="${height - bottom + 2}" width="${wide}" height="5" fill="#111"/>`
    })
    .join('')
  const marks = Array.from(
    { length: Math.floor(hours / 2) + 1 },
    (_, i) => `<text x="${x(2 * i)}" y="${height - 4}">${2 * i} h</text>`,
  ).join('')
  const levels = [100, 200, 300, 400]
    .filter((c) => c < top)
    .map((c) => `<text x="2" y="${y(c)}">${c} °C</text>`)
    .join('')
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif" font-size="11"><rect width="${width}" height="${height}" fill="#fff"/>${best}${line((p) => p.wall, 'stroke="#8a8880"')}${line((p) => p.smoke, 'stroke="#111" stroke-width="2"')}${line((p) => p.estimated, 'stroke="#00548c" stroke-width="2" stroke-dasharray="6 4"')}${bar}${marks}${levels}<text x="${left + 6}" y="20">${w.rows.name}, ${w.rows.kind}, ${w.rows.smoke ? 'smoke probe' : 'three probes'}: captured ${score.toFixed(2)}</text></svg>\n`
}
