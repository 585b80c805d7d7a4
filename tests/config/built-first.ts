import { ensureBuilt } from '../../server/launch.mjs'

/** Tests that start the service or a worker thread run the built entries, so they are made once, before any test. */
export default function builtFirst(): void {
  ensureBuilt()
}
