import { closeSync, openSync, readFileSync, writeSync } from 'node:fs'
import { airC } from '../../../server/domain/cooling/fit.ts'
import { leakFeatures } from '../../../server/domain/cooling/leak.ts'
import { nightSigns, wallNowK } from '../../../server/domain/cooling/signs.ts'
import { burnsAt, type Signs } from './burning.ts'
import { leadMin } from './course.ts'
import { follow } from './follow.ts'
import { phase } from './phases.ts'

/** One look at a night: what is known then, and what was true. */
export interface Row {
  night: number
  feltC: number
  nowK: number
  hottestC: number
  /** W, the most of the half hour before. */
  burningW: number
  signs: Float32Array
}

const everyMin = 30
const fromMin = 300
/** Cold for so many looks, nothing is to be learnt any more. */
const coldLooks = 8
/** Numbers of a row before its signs, and its signs. */
const heads = 5
const signCount = 28

/** Follows nights `first` to `first + count` and writes their rows to `file`; `leak` gets the signs of the leak and whether one burns. */
export function gather(first: number, count: number, file: string, leak: (x: number[], leaks: boolean) => void): void {
  const out = openSync(file, 'w')
  for (let n = first; n < first + count; n++) {
    const { course, readings } = phase(n)
    if (readings.off !== null) continue
    const burns = burnsAt(course)
    const noted: number[] = []
    let cold = 0
    const signs: Signs = (cooling, minute, look) => {
      if (minute % 10 !== 0) return
      const x = leakFeatures(cooling.points, cooling.firstK)
      if (x !== null && (burns === null || minute < burns)) leak(x, false)
      else if (x !== null && burns !== null && minute >= burns + 60 && minute <= burns + 240) leak(x, true)
      if (minute % everyMin !== 0 || minute < fromMin || cold > coldLooks) return
      const seen = nightSigns(cooling, look, airC(look))
      const felt = cooling.feltC
      if (seen === null || felt === null) return
      const hottest = course.hottest[minute + leadMin] ?? 999
      let burning = 0
      for (let i = 0; i < everyMin; i++) burning = Math.max(burning, course.burningW[minute + leadMin - i] ?? 0)
      if (hottest < 30 && burning === 0) cold++
      noted.push(n, felt, wallNowK(cooling.points) ?? 0, hottest, burning, ...seen)
    }
    follow(course, readings, null, signs)
    writeSync(out, Buffer.from(Float32Array.from([noted.length / (heads + signCount), ...noted]).buffer))
  }
  closeSync(out)
}

/** Reads what {@link gather} wrote. */
export function rowsOf(file: string): Row[] {
  const bytes = readFileSync(file)
  const all = new Float32Array(bytes.buffer, bytes.byteOffset, Math.floor(bytes.byteLength / 4))
  const rows: Row[] = []
  for (let at = 0; at < all.length;) {
    const count = all[at++] ?? 0
    for (let r = 0; r < count; r++) {
      const [night = 0, feltC = 0, nowK = 0, hottestC = 0, burningW = 0] = all.subarray(at, at + heads)
      rows.push({ night, feltC, nowK, hottestC, burningW, signs: all.slice(at + heads, at + heads + signCount) })
      at += heads + signCount
    }
  }
  return rows
}
