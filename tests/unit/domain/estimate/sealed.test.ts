import { expect, test } from 'vitest'
import { emptySealed, sealedBeat, startSealed } from '../../../../server/domain/estimate/sealed.ts'

// Walls of sealed kilns, every two hours, as a made-up but usual drum cools (time constants of 3 h, then 7 h, as earth-covered drums show).
const tightWall = (h: number): number => 20 + 150 * Math.exp(-h / 2.5) + 150 * Math.exp(-h / 7)

function follow(wall: (h: number) => number, hours: number, charShare = 0.95): ReturnType<typeof emptySealed> {
  const s = emptySealed()
  const word = new Uint32Array([3])
  startSealed(s, charShare, word)
  for (let k = 0; k <= hours * 6; k++) sealedBeat(s, wall(k / 6), 20, NaN, word)
  return s
}

test('the bound lies above the wall at every hour and comes down as the kiln cools', () => {
  const s = emptySealed()
  const word = new Uint32Array([3])
  startSealed(s, 0.95, word)
  const bounds: number[] = []
  for (let k = 0; k <= 40 * 6; k++) {
    sealedBeat(s, tightWall(k / 6), 20, NaN, word)
    expect(s.upperC).toBeGreaterThan(tightWall(k / 6))
    if (k % 60 === 59) bounds.push(s.upperC)
  }
  expect(bounds[bounds.length - 1]).toBeLessThan(45)
  expect(bounds[0]).toBeGreaterThan(80)
}, 60000)

test('a wall that is cool while the bed was never charred is no proof: the bound stays above 45 °C for the night', () => {
  const s = follow((h) => 25 + 20 * Math.exp(-h / 8), 10, 0.1)
  expect(s.upperC).toBeGreaterThan(45)
}, 60000)

test('a kiln that stands warm instead of cooling leaks; one that cools as others do does not', () => {
  expect(follow(tightWall, 14).leakChance).toBeLessThan(0.4)
  expect(follow((h) => Math.max(tightWall(h), 110 + h), 14).leakChance).toBeGreaterThan(0.4)
}, 60000)

test('after an hour without drum or core nothing is claimed of the hottest part', () => {
  expect(follow((h) => (h > 30 ? NaN : tightWall(h)), 32).upperC).toBeGreaterThan(500)
}, 60000)
