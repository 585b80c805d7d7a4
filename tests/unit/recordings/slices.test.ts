import { expect, test } from 'vitest'
import { inSlices } from '../../../server/recordings/slices.ts'

test('long work lets others have their turn, and gives what it came to', async () => {
  let clock = 0
  function* steps(): Generator<number, string> {
    for (let n = 0; n < 1280; n++) {
      clock += 1
      yield n
    }
    return 'done'
  }
  let pauses = 0
  const taken: number[] = []
  const pause = () => {
    pauses++
    return Promise.resolve()
  }
  const result = await inSlices(
    steps(),
    (n) => taken.push(n),
    pause,
    () => clock,
  )
  expect(result).toBe('done')
  expect(taken).toHaveLength(1280)
  // a look at the clock every 64 steps of a millisecond each
  expect(pauses).toBe(20)
})

test('a step that fails fails the whole', async () => {
  function* steps(): Generator<number, void> {
    yield 1
    throw new Error('line 2')
  }
  await expect(inSlices(steps())).rejects.toThrow('line 2')
})
