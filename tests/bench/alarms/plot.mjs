// Draws the table of CURVE.md: false alarms a firing against the share that was told in time.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const width = 640
const height = 360
const left = 60
const right = width - 20
const bottom = height - 50
const top = 20

/** Every row of the table as [name, false a firing, share told]. */
function rowsOf(text) {
  return text
    .split('\n')
    .filter((line) => /^\| .*\d+\/\d+/.test(line))
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .map((cells) => {
      const [told, happened] = cells.at(-3).split('/').map(Number)
      return [cells[1], Number(cells.at(-2)), told / happened]
    })
}

export function plot(folder) {
  const rows = rowsOf(readFileSync(join(folder, 'CURVE.md'), 'utf8'))
  const most = Math.max(...rows.map(([, wrong]) => wrong)) * 1.1
  const x = (wrong) => left + (wrong / most) * (right - left)
  const y = (told) => bottom - told * (bottom - top)
  const text = (at, level, said, more = '') => `<text x="${at.toFixed(1)}" y="${level.toFixed(1)}" font-size="11" ${more}>${said}</text>`
  const heard = new Map()
  for (const [name, wrong, told] of rows) {
    const key = `${x(wrong).toFixed(1)} ${y(told).toFixed(1)}`
    heard.set(key, [...(heard.get(key) ?? []), name.replace('on-delay ', '')])
  }
  const points = [...heard].map(([key, names], i) => {
    const [px, py] = key.split(' ').map(Number)
    const below = py + 16 + 13 * (i % 8)
    return `<circle cx="${px}" cy="${py}" r="4"/><line x1="${px}" y1="${py}" x2="${px}" y2="${below - 9}" stroke="#888"/>${text(px + 3, below, names.join(', '))}`
  })
  const ticks = [0, 0.2, 0.4, 0.6, 0.8, 1].map((told) => text(left - 34, y(told) + 4, `${told * 100} %`))
  const wrongs = [0, 0.5, 1, 1.5, 2].filter((wrong) => wrong < most).map((wrong) => text(x(wrong) - 8, bottom + 16, String(wrong)))
  const axes = `<path d="M${left} ${top}V${bottom}H${right}" fill="none" stroke="#000"/>`
  const titles =
    text(left, height - 12, 'false alarms a firing; upwards: incidents told in time') +
    text(x(0.2) + 3, top + 160, 'wanted: 0.2 at most', 'fill="#555"')
  const wanted = `<path d="M${x(0.2).toFixed(1)} ${top}V${bottom}M${left} ${y(0.9).toFixed(1)}H${right}" stroke="#999" stroke-dasharray="4 4" fill="none"/>`
  const body = [axes, wanted, ...ticks, ...wrongs, ...points, titles].join('\n')
  writeFileSync(
    join(folder, 'curve.svg'),
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" font-family="sans-serif"><rect width="${width}" height="${height}" fill="#fff"/>\n${body}\n</svg>\n`,
  )
}
