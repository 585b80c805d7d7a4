import { closeSync, openSync, readFileSync, writeSync } from 'node:fs'
import { airC } from '../../../server/domain/cooling/fit.ts'
import { leakFeatures } from '../../../server/domain/cooling/leak.ts'
import { coreSigns, nightSigns, nowK } from '../../../server/domain/cooling/signs.ts'
import { burnsAt, type Signs } from './burning.ts'
import { leadMin } from './course.ts'
import { follow } from './follow.ts'
import type { Which } from './leak.ts'
import { phase } from './phases.ts'
import type { Core } from './probes.ts'

/** One look at a night: what is known then, and what was true. */
export interface Row {
  night: number
  /** The wall probe had come off and nobody knew: of no use for the bound, and never to be opened on. */
  off: boolean
  feltC: number
  /** The probe that bounds the hottest part, over what the cover felt: the core where there is one, else the wall. */
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
/** Numbers of a row before its signs. */
const heads = 6
/** Warmer in the middle than this nobody asks what else is warm, °C. */
const coreFarC = 75
export interface Wanted {
  first: number
  count: number
  which: Which
  core: Core
}

/** Follows `count` nights from `first` on and adds their rows to `file`; `leak` gets the signs of the leak and whether one burns. */
export function gather({ first, count, which, core }: Wanted, file: string, leak: (x: number[], leaks: boolean) => void): void {
  const out = openSync(file, 'a')
  for (let n = first; n < first + count; n++) {
    const { course, readings } = phase(n, which, core)
    const burns = burnsAt(course)
    const noted: number[] = []
    let cold = 0
    let signCount = 0
    const signs: Signs = (cooling, minute, look) => {
      if (minute % 10 !== 0) return
      const offNow = readings.off !== null && minute >= readings.off.minute
      const x = offNow ? null : leakFeatures(cooling.points, cooling.firstK)
      if (x !== null && (burns === null || minute < burns)) leak(x, false)
      else if (x !== null && burns !== null && minute >= burns + 60 && minute <= burns + 240) leak(x, true)
      if (minute % everyMin !== 0 || minute < fromMin || cold > coldLooks || cooling.wallOff !== null) return
      const night = nightSigns(cooling, look, airC(look))
      const seen = night === null || core === 'some' ? night : coreSigns(cooling, night)
      const felt = cooling.feltC
      if (seen === null || felt === null) return
      const overK = nowK(core === 'some' ? cooling.points : cooling.corePoints) ?? 0
      if (core === 'all' && felt + overK > coreFarC) return
      const hottest = course.hottest[minute + leadMin] ?? 999
      let burning = 0
      for (let back = 0; back < everyMin; back++) burning = Math.max(burning, course.burningW[minute + leadMin - back] ?? 0)
      if (hottest < 30 && burning === 0) cold++
      signCount = seen.length
      noted.push(n, offNow ? 1 : 0, felt, overK, hottest, burning, ...seen)
    }
    follow(course, readings, null, signs)
    writeSync(out, Buffer.from(Float32Array.from([noted.length, signCount, ...noted]).buffer))
  }
  closeSync(out)
}

/** Reads what {@link gather} wrote. */
export function rowsOf(file: string): Row[] {
  const bytes = readFileSync(file)
  const all = new Float32Array(bytes.buffer, bytes.byteOffset, Math.floor(bytes.byteLength / 4))
  const rows: Row[] = []
  for (let at = 0; at < all.length;) {
    const end = at + 2 + (all[at] ?? 0)
    const signCount = all[at + 1] ?? 0
    for (at += 2; at < end; at += heads + signCount) {
      const [night = 0, off = 0, feltC = 0, nowK = 0, hottestC = 0, burningW = 0] = all.subarray(at, at + heads)
      rows.push({ night, off: off > 0, feltC, nowK, hottestC, burningW, signs: all.slice(at + heads, at + heads + signCount) })
    }
  }
  return rows
}
