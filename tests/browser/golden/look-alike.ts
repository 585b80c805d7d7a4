import type { Picture } from '../../support/png.ts'

/** Side of a cell, px: letters may be smoothed otherwise on another machine, what stands where may not. */
export const cellPx = 8

/** Mean lightness of each cell, 0 to 255 (weights of ITU-R BT.709). */
export function cellsOf({ width, height, rgb }: Picture): { columns: number; rows: number; light: Float32Array } {
  const columns = Math.ceil(width / cellPx)
  const rows = Math.ceil(height / cellPx)
  const light = new Float32Array(columns * rows)
  const count = new Float32Array(columns * rows)
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const cell = Math.floor(y / cellPx) * columns + Math.floor(x / cellPx)
      const at = (y * width + x) * 3
      light[cell] = (light[cell] ?? 0) + 0.2126 * (rgb[at] ?? 0) + 0.7152 * (rgb[at + 1] ?? 0) + 0.0722 * (rgb[at + 2] ?? 0)
      count[cell] = (count[cell] ?? 0) + 1
    }
  return { columns, rows, light: light.map((sum, cell) => sum / (count[cell] ?? 1)) }
}

/** Share of cells that differ by more than `steps` of lightness; 1 when the pictures are of different sizes. */
export function difference(a: Picture, b: Picture, steps = 24): number {
  const [one, other] = [cellsOf(a), cellsOf(b)]
  if (one.columns !== other.columns || one.rows !== other.rows) return 1
  let differ = 0
  one.light.forEach((light, cell) => {
    if (Math.abs(light - (other.light[cell] ?? 0)) > steps) differ += 1
  })
  return differ / one.light.length
}
