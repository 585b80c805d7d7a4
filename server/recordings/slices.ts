/** The kiln beside which the service runs must not wait for a file: so long at once, ms. */
const sliceMs = 10
/** Steps between two looks at the clock. */
const stepsAtOnce = 64

/** Runs steps to their end with pauses between, in which whatever else runs in the program gets its turn. */
export async function inSlices<T, R>(
  steps: Generator<T, R>,
  take: (step: T) => void = () => undefined,
  pause: () => Promise<void> = () => new Promise((go) => setImmediate(go)),
  now: () => number = () => performance.now(),
): Promise<R> {
  let since = now()
  for (let count = 1; ; count++) {
    const step = steps.next()
    if (step.done) return step.value
    take(step.value)
    if (count % stepsAtOnce === 0 && now() - since > sliceMs) {
      await pause()
      since = now()
    }
  }
}
