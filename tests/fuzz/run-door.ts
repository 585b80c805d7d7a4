import type { FuzzDoor } from './doors.ts'
import { Dice, mutated } from './mutate.ts'

/** Longer than this for one input is a hang, also on a small board that is busy. */
const hangMs = 2000

export interface Finding {
  door: string
  index: number
  what: string
  input: Buffer
}

/** Feeds one door until `goOn` says no. Each input has dice of its own, so that the same seed plays the same, but for what a door remembers. */
export async function runDoor(
  door: FuzzDoor,
  seed: number,
  goOn: (done: number) => boolean,
): Promise<{ done: number; findings: Finding[] }> {
  const findings: Finding[] = []
  const known = new Set<string>()
  let index = 0
  for (; goOn(index); index++) {
    // the service in the same process must get its turn
    if (index % 100 === 0) await new Promise((resolve) => setImmediate(resolve))
    const dice = new Dice(seed * 1_000_003 + index)
    const input = mutated(door.seeds, dice)
    const began = performance.now()
    let what: string | null = null
    try {
      await door.check(input, dice)
    } catch (problem) {
      what = problem instanceof Error ? `${problem.message} ${problem.stack?.split('\n')[1]?.trim() ?? ''}` : String(problem)
    }
    const took = performance.now() - began
    if (took > hangMs) what ??= `took ${Math.round(took)} ms`
    // the same place once
    const kind = what?.replace(/\d+/g, '#') ?? ''
    if (what !== null && !known.has(kind)) {
      known.add(kind)
      findings.push({ door: door.name, index, what, input })
    }
  }
  return { done: index, findings }
}
