import { expect, it } from 'vitest'
import { pureDoors } from '../fuzz/doors.ts'
import { runDoor } from '../fuzz/run-door.ts'

// The short form of `npm run fuzz`: the same doors and the same changes, one seed, so many inputs.

it.each(pureDoors().map((door) => [door.name, door] as const))('%s: no changed input breaks a promise', async (_name, door) => {
  const { findings } = await runDoor(door, Number(process.env['FUZZ_SEED'] ?? 1), (done) => done < 400)
  expect(findings.map(({ index, what, input }) => `input ${index}: ${what}\n${input.subarray(0, 300).toString('latin1')}`)).toEqual([])
})
