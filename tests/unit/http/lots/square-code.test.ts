import { describe, expect, it } from 'vitest'
import { squareCode } from '../../../../server/http/lots/square-code.ts'

/** The dark modules of the drawing, without its quiet border of four. */
function modules(svg: string): { size: number; dark: Set<string> } {
  const size = Number(/viewBox="0 0 (\d+) /.exec(svg)?.[1]) - 8
  const path = [...svg.matchAll(/M(\d+) (\d+)h1v1h-1z/g)]
  return { size, dark: new Set(path.map(([, x, y]) => `${String(Number(x) - 4)},${String(Number(y) - 4)}`)) }
}

describe('the square code of a label', () => {
  it('is built as ISO/IEC 18004 says: size, three finders, timing line, the lone dark module', () => {
    const { size, dark } = modules(squareCode('http://box.local:8420/#/lots/7'))
    expect((size - 17) % 4).toBe(0)
    const at = (x: number, y: number): boolean => dark.has(`${String(x)},${String(y)}`)
    for (const [left, top] of [
      [0, 0],
      [size - 7, 0],
      [0, size - 7],
    ] as const) {
      for (let y = 0; y < 7; y += 1) {
        for (let x = 0; x < 7; x += 1) {
          const ring = Math.max(Math.abs(x - 3), Math.abs(y - 3))
          expect(at(left + x, top + y)).toBe(ring !== 2)
        }
      }
    }
    for (let x = 8; x < size - 8; x += 1) expect(at(x, 6)).toBe(x % 2 === 0)
    expect(at(8, size - 8)).toBe(true)
  })

  it('differs for another lot, and takes any name at all', () => {
    expect(squareCode('LOT 7')).not.toBe(squareCode('LOT 8'))
    for (const text of ['ล็อต 7', '\ud800', '<script>', '%', ''])
      expect(squareCode(text)).toMatch(/^<svg [^<]*<path[^<]*<path d="[M0-9hv z-]*"\/><\/svg>$/)
  })
})
