import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { gunzipSync } from 'node:zlib'
import { beforeAll, describe, expect, it } from 'vitest'
import { intakeFold } from '../../../../server/domain/intake/fold.ts'
import type { KilnInput } from '../../../../server/domain/intake/types.ts'
import { samplesOf } from './story.ts'
import type { Sample } from './story.ts'

interface Line {
  at: string
  topic: string
  payload: { n: string; v?: number; vs?: string; t?: number }[]
}

// Recorded practice firings of a kiln model that is not ours; they lie beside the repository.
const folder = fileURLToPath(new URL('../../../../../shared/firings/practice/', import.meta.url))
const files = existsSync(folder) ? readdirSync(folder).filter((name) => name.endsWith('.jsonl.gz')) : []

const read = (file: string) =>
  gunzipSync(readFileSync(folder + file))
    .toString('utf8')
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Partial<Line>)
    .filter((line): line is Line => line.topic !== undefined)

const isMeasured = ({ n }: { n: string }) => !/^(boot|seq|up)$|\/cj$/.test(n)

/** Counted from the file alone: packs that come twice have the number of an earlier one. */
function count(lines: Line[]) {
  const seen = new Set<number>()
  const counted = { samples: 0, faults: 0, refused: 0, duplicates: 0, late: 0 }
  for (const { topic, payload } of lines) {
    if (!/(readings|backlog)$/.test(topic)) continue
    const seq = payload.find(({ n }) => n === 'seq')?.v ?? NaN
    const measured = payload.filter(isMeasured)
    if (seen.has(seq)) {
      counted.duplicates += measured.length
      continue
    }
    seen.add(seq)
    counted.samples += measured.length
    const impossible = measured.filter(({ v }) => v !== undefined && v < -50).length
    counted.refused += impossible
    counted.faults += impossible + measured.filter(({ vs }) => vs !== undefined).length
    if (topic.endsWith('backlog')) counted.late += measured.length
  }
  return counted
}

function play(lines: Line[]) {
  let state = intakeFold.start({ root: 'firing', site: 'yard' })
  const heard: { at: number; line: Line; inputs: readonly KilnInput[] }[] = []
  const refused: unknown[] = []
  const commands: unknown[] = []
  for (const [i, line] of lines.entries()) {
    const at = Date.parse(line.at)
    const payload = new TextEncoder().encode(JSON.stringify(line.payload))
    const result = intakeFold.step(state, { seq: i + 1, at, topic: line.topic, payload, retained: false })
    state = result.state
    refused.push(...result.refused)
    commands.push(...result.commands)
    heard.push({ at, line, inputs: result.inputs })
  }
  return { heard, refused, commands, node: intakeFold.view(state)[0] }
}

if (files.length === 0) {
  it('the practice firings were not played: they are not beside the repository', () => {
    expect(existsSync(folder)).toBe(false)
  })
} else {
  describe.each(files)('%s', (file) => {
    let lines: Line[] = []
    let played: ReturnType<typeof play> = play([])
    let counted = count([])
    let samples: Sample[] = []
    beforeAll(() => {
      lines = read(file)
      played = play(lines)
      counted = count(lines)
      samples = played.heard.flatMap(({ inputs }) => samplesOf(inputs))
    })

    it('passes with nothing refused but spikes below any air, every sample once, every fault, every duplicate and every late one told', () => {
      const { heard, refused, commands, node } = played
      expect(commands).toEqual([])
      expect(heard.flatMap(({ inputs }) => inputs).filter(({ kind }) => kind === 'health')).toEqual([])
      expect({
        samples: samples.length,
        faults: samples.filter(({ quality }) => quality.startsWith('fault:')).length,
        refused: refused.length,
        duplicates: node?.duplicates,
        late: samples.filter(({ late }) => late).length,
      }).toEqual(counted)
    })

    it('places every sample: by its own clock, or within the delay of the network of when it came; and in order', () => {
      const newest = new Map<string, number>()
      let wrong = 0
      for (const { at, line, inputs } of played.heard) {
        const sentS = Array.isArray(line.payload) ? line.payload.find(isMeasured)?.t : undefined
        for (const { channel, t, late } of samplesOf(inputs)) {
          if (sentS !== undefined && sentS > 268_435_456) wrong += Number(t !== Math.round(sentS * 1000))
          else if (!late) wrong += Number(t > at || at - t > 700)
          if (late) continue
          wrong += Number(t <= (newest.get(channel) ?? 0))
          newest.set(channel, t)
        }
      }
      expect(wrong).toBe(0)
    })

    it('spaces what came late as it was measured', () => {
      const times = [...new Set(samples.filter(({ late }) => late).map(({ t }) => t))]
      const firstLate = samples.findIndex(({ late }) => late)
      expect(times.length > 0).toBe(counted.late > 0)
      for (const [i, t] of times.entries()) {
        const before = times[i - 1]
        if (before !== undefined && t - before < 60_000) expect(Math.abs(t - before - 10_000)).toBeLessThanOrEqual(1)
      }
      if (firstLate >= 0) expect(times[0]).toBeLessThan(samples[firstLate - 1]?.t ?? Infinity)
    })

    it('bends straight lines and tells good values within what a kiln can have, glitches apart', () => {
      const good = samples.flatMap(({ quality, value, raw }) =>
        quality === 'good' && value !== null && raw !== null ? [{ value, raw }] : [],
      )
      expect(good.filter(({ value }) => value < -200 || value > 1372)).toEqual([])
      expect(good.filter(({ value }) => value > 0 && value < 1100).length / good.length).toBeGreaterThan(0.99)
      const straight = JSON.stringify(lines[0]).includes('"linearised":false')
      expect(good.some(({ value, raw }) => value !== raw)).toBe(straight)
    })
  })
}
