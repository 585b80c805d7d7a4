import { describe, expect, it } from 'vitest'
import { describeTrack, readTrack, startTrack, trackNode, trackSample } from '../../../../server/domain/channels/track.ts'
import type { Track } from '../../../../server/domain/channels/track.ts'
import type { Quality } from '../../../../server/contract/fold.ts'

const start = Date.UTC(2026, 2, 1)
const good = (t: number, value: number) => ({ t: start + t * 1000, late: false, quality: 'good' as Quality, value })

/** A channel every `stepS`, with a small fixed pattern of steps of the converter on top. */
function run(track: Track, fromS: number, toS: number, stepS: number, valueAt: (s: number) => number): Track {
  for (let s = fromS; s <= toS; s += stepS) trackSample(track, good(s, valueAt(s) + ((s / stepS) % 3) * 0.0625))
  return track
}

describe('value', () => {
  it('is the calibrated reading itself, not a smoothed one', () => {
    const track = startTrack(5, 0.0625)
    trackSample(track, good(0, 30))
    trackSample(track, good(5, 30.5), { gain: 0.99, offset: 1 })
    expect(readTrack(track, start + 5000)).toMatchObject({ value: 0.99 * 30.5 + 1, quality: 'good', t: start + 5000, heard: 'fresh' })
  })

  it('passes over a single spike and says nothing of it', () => {
    const track = run(startTrack(5, 0.0625), 0, 60, 5, () => 31)
    trackSample(track, good(65, 350))
    expect(track.took).toBeNull()
    expect(readTrack(track, start + 65_000)).toMatchObject({ quality: 'good', t: start + 60_000, heard: 'fresh' })
    trackSample(track, good(70, 31))
    expect(readTrack(track, start + 70_000)).toMatchObject({ value: 31, t: start + 70_000 })
  })

  it('believes a step with the second reading that agrees', () => {
    const track = run(startTrack(5, 0.0625), 0, 60, 5, () => 31)
    trackSample(track, good(65, 58))
    expect(track.took).toBeNull()
    trackSample(track, good(70, 59))
    expect(track.took).toBe(59)
  })

  it('turns away what is more than five scales off, the scale being at least a step of the converter', () => {
    for (const [value, took] of [
      [31.25, 31.25],
      [31.5, null],
    ] as const) {
      const track = startTrack(5, 0.25)
      for (let s = 0; s <= 60; s += 5) trackSample(track, good(s, 30))
      expect(trackSample(track, good(65, value)).took).toBe(took)
    }
  })

  it('waits on where the second reading is far from the first as well', () => {
    const track = run(startTrack(5, 0.0625), 0, 60, 5, () => 31)
    const took = [58, 75, 77].map((value, i) => trackSample(track, good(65 + 5 * i, value)).took)
    expect(took).toEqual([null, null, 77])
  })

  it('still knows a spike just after a step', () => {
    const track = run(startTrack(5, 0.25), 0, 60, 5, () => 31)
    const took = [58, 58, 59, 350, 59].map((value, i) => trackSample(track, good(65 + 5 * i, value)).took)
    expect(took).toEqual([null, 58, 59, null, 59])
  })

  it('allows a young window twice the scatter that was known, and no more', () => {
    const noisy = (s: number) => 31 + ((s / 5) % 2) * 2
    for (const [value, took] of [
      [72, 72],
      [90, null],
    ] as const) {
      const track = startTrack(5, 0.25)
      for (let s = 0; s <= 60; s += 5) trackSample(track, good(s, noisy(s)))
      for (const [i, step] of [58, 58].entries()) trackSample(track, good(65 + 5 * i, step))
      expect(trackSample(track, good(75, value)).took).toBe(took)
    }
  })

  it('goes back at once where two spikes looked like a step', () => {
    const track = run(startTrack(5, 0.0625), 0, 60, 5, () => 16)
    trackSample(track, good(65, 395))
    trackSample(track, good(70, 374))
    trackSample(track, good(75, 16))
    expect(readTrack(track, start + 75_000).value).toBe(16)
  })

  it('stands by no number where nothing agrees with anything', () => {
    const track = run(startTrack(5, 0.0625), 0, 60, 5, () => 31)
    for (const [i, value] of [350, -200, 900].entries()) trackSample(track, good(65 + 5 * i, value))
    expect(readTrack(track, start + 75_000).quality).toBe('suspect')
  })

  it('follows a ramp of 10 K in 10 s without passing over any of it', () => {
    const track = startTrack(10, 0.25)
    let passedOver = 0
    for (let s = 0; s <= 600; s += 10) {
      trackSample(track, good(s, 100 + s))
      if (track.took === null) passedOver++
    }
    expect(passedOver).toBe(0)
  })

  it('is null on a fault, never the last number, and back with the next reading', () => {
    const track = run(startTrack(5, 0.0625), 0, 60, 5, () => 31)
    trackSample(track, { t: start + 65_000, late: false, quality: 'fault:open', value: null })
    expect(readTrack(track, start + 65_000)).toMatchObject({ value: null, quality: 'fault:open', heard: 'fresh' })
    trackSample(track, good(70, 31))
    expect(readTrack(track, start + 70_000)).toMatchObject({ value: 31, quality: 'good' })
  })

  it('carries doubt from the intake along', () => {
    const track = startTrack(5, 0.0625)
    trackSample(track, { ...good(0, 30), quality: 'suspect' })
    expect(readTrack(track, start)).toMatchObject({ value: 30, quality: 'suspect' })
  })
})

describe('silence (wire format, rule 7)', () => {
  it.each([
    [5, 15, 60],
    [10, 30, 60],
    [60, 180, 360],
    [1, 15, 60],
  ])('a period of %d s: late after %d s, lost after %d s', (periodS, lateS, lostS) => {
    const track = startTrack(periodS, 0.25)
    expect(readTrack(track, start).heard).toBe('never')
    trackSample(track, good(0, 40))
    const heard = (s: number) => readTrack(track, start + s * 1000)
    expect(heard(lateS).heard).toBe('fresh')
    expect(heard(lateS + 1)).toMatchObject({ heard: 'late', value: 40 })
    expect(heard(lostS).heard).toBe(lostS > lateS ? 'late' : 'fresh')
    expect(heard(lostS + 1)).toMatchObject({ heard: 'lost', value: null })
  })

  it('is lost at once with the node, and back with its next reading', () => {
    const track = run(startTrack(5, 0.25), 0, 20, 5, () => 40)
    trackNode(track, 'lost')
    expect(readTrack(track, start + 21_000)).toMatchObject({ heard: 'lost', value: null })
    trackSample(track, good(25, 40))
    expect(readTrack(track, start + 25_000)).toMatchObject({ heard: 'fresh', value: 40 })
  })

  it('takes what comes after five minutes of silence as it comes', () => {
    const track = run(startTrack(5, 0.25), 0, 60, 5, () => 40)
    trackSample(track, good(400, 300))
    expect(readTrack(track, start + 400_000).value).toBe(300)
  })

  it('counts a fault and an outlier as heard', () => {
    const track = run(startTrack(5, 0.25), 0, 60, 5, () => 40)
    trackSample(track, good(74, 900))
    expect(readTrack(track, start + 80_000)).toMatchObject({ heard: 'fresh', t: start + 60_000 })
  })
})

describe('level and slope', () => {
  it('needs three minutes, then finds the slope of a straight run with an honest deviation', () => {
    const track = run(startTrack(10, 0.25), 0, 150, 10, (s) => 100 + s / 60)
    expect(readTrack(track, start + 150_000).slopePerH).toBeNull()
    // Six parts of half a minute lie two and a half minutes apart, the seventh makes it three.
    run(track, 160, 200, 10, (s) => 100 + s / 60)
    expect(readTrack(track, start + 200_000).slopePerH).toBeNull()
    run(track, 210, 210, 10, (s) => 100 + s / 60)
    expect(readTrack(track, start + 210_000).slopePerH).not.toBeNull()
    run(track, 220, 900, 10, (s) => 100 + s / 60)
    const { slopePerH, slopeSd, level } = readTrack(track, start + 900_000)
    expect(Math.abs((slopePerH ?? NaN) - 60)).toBeLessThan(3 * (slopeSd ?? NaN))
    expect(slopeSd).toBeLessThan(1)
    expect(level).toBeCloseTo(100 + 885 / 60, 0)
  })

  it('works at irregular times, through a gap and past spikes', () => {
    const track = startTrack(10, 0.25)
    let s = 0
    for (let i = 0; i < 160; i++) {
      s += [3, 10, 17, 6][i % 4] ?? 10
      if (s > 700 && s < 800) continue
      trackSample(track, good(s, 200 + s / 30 + (i % 5 === 0 ? 0.25 : 0) + (i % 37 === 36 ? 300 : 0)))
    }
    expect(readTrack(track, start + s * 1000).slopePerH).toBeGreaterThan(115)
    expect(readTrack(track, start + s * 1000).slopePerH).toBeLessThan(125)
  })

  it('is not disturbed by late or old readings, nor is anything else', () => {
    const track = run(startTrack(10, 0.25), 0, 600, 10, (s) => 100 + s / 60)
    const before = JSON.stringify({ ...track, took: null })
    trackSample(track, { ...good(500, 700), late: true })
    trackSample(track, { ...good(700, 700), late: true })
    trackSample(track, good(600, 700))
    trackSample(track, good(555, 700))
    expect(JSON.stringify({ ...track, took: null })).toBe(before)
  })

  it('is told no more when its end is older than two silences', () => {
    const track = run(startTrack(30, 0.25), 0, 900, 30, (s) => 100 + s / 60)
    expect(readTrack(track, start + 900_000).slopePerH).not.toBeNull()
    expect(readTrack(track, start + 1_075_000)).toMatchObject({ heard: 'late', slopePerH: null })
  })
})

describe('as state', () => {
  it('stays small and goes on the same after JSON', () => {
    const wave = (s: number) => 300 + 40 * Math.sin(s / 200)
    const whole = run(startTrack(5, 0.25), 0, 7200, 5, wave)
    const thawed = JSON.parse(JSON.stringify(run(startTrack(5, 0.25), 0, 3600, 5, wave))) as Track
    expect(JSON.parse(JSON.stringify(run(thawed, 3605, 7200, 5, wave)))).toEqual(JSON.parse(JSON.stringify(whole)))
    expect(JSON.stringify(whole).length).toBeLessThan(4000)
  })

  it('learns period, step and probe later', () => {
    const track = describeTrack(startTrack(5, 0.25), 30, 0.0625, { sensor: 'ds18b20', converter: 'none', linearised: true })
    trackSample(track, good(0, 40))
    expect(readTrack(track, start + 80_000)).toMatchObject({ heard: 'fresh' })
    expect(readTrack(track, start).error).toBeLessThan(0.6)
  })
})
