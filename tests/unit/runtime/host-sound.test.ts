import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, it, vi } from 'vitest'
import { HostSound, type Sounding } from '../../../server/runtime/host-sound.ts'
import { silentLog, type Log } from '../../../server/runtime/log.ts'

/** A program that writes down what it was run with. */
function program(text = 'echo "$@" >> "$0.heard"'): { path: string; heard: () => string[] } {
  const path = join(mkdtempSync(join(tmpdir(), 'sound-')), 'sound')
  writeFileSync(path, `#!/bin/sh\n${text}\n`, { mode: 0o700 })
  const heard = (): string[] => {
    try {
      return readFileSync(`${path}.heard`, 'utf8').trim().split('\n')
    } catch {
      return []
    }
  }
  return { path, heard }
}

function hostSound(path: string, log: Log = silentLog): { look: (now: number, sounding: Sounding | null) => void } {
  let now: Sounding | null = null
  const sound = new HostSound(path, () => now, log)
  return {
    look: (at, sounding) => {
      now = sounding
      sound.look(at)
    },
  }
}
const hot: Sounding = { alarm: 'condenser-hot', priority: 'urgent' }
const warm: Sounding = { alarm: 'condenser-warm', priority: 'warning' }

// how often: as the page's own patterns (field-ui 4.6: an urgent alarm at least every 5 s)
it('runs the program with priority and code, again while nobody hushes it, and at once for another alarm', async () => {
  const { path, heard } = program()
  const { look } = hostSound(path)
  look(0, null)
  look(1000, hot)
  await vi.waitFor(() => expect(heard()).toEqual(['urgent condenser-hot']))
  look(5900, hot)
  // the first sound is over and the next is not due
  await new Promise((done) => setTimeout(done, 50))
  look(6000, hot)
  await vi.waitFor(() => expect(heard()).toHaveLength(2))
  await vi.waitFor(() => {
    look(7000, warm)
    expect(heard().at(-1)).toBe('warning condenser-warm')
  })
  expect(heard()).toHaveLength(3)
})

it('is still once the alarm was hushed, and begins anew with the next', async () => {
  const { path, heard } = program()
  const { look } = hostSound(path)
  look(0, { alarm: 'fire-dying', priority: 'notice' })
  await vi.waitFor(() => expect(heard()).toEqual(['notice fire-dying']))
  for (let at = 1000; at < 3_600_000; at += 60_000) look(at, { alarm: 'fire-dying', priority: 'notice' })
  look(3_600_000, null)
  await vi.waitFor(() => {
    look(3_601_000, { alarm: 'fire-dying', priority: 'notice' })
    expect(heard()).toHaveLength(2)
  })
})

it('says in the log that a program failed or is not there, and tries again', async () => {
  const logged: object[] = []
  const log: Log = { ...silentLog, error: (facts) => void logged.push(facts) }
  const failing = program('exit 7')
  // a sound that is not stopped by hand: started, so that its end counts
  const sound = new HostSound(failing.path, () => hot, log)
  sound.start()
  await vi.waitFor(() => expect(logged).toEqual([{ program: failing.path, status: 7, signal: null }]), { timeout: 10_000 })
  sound.stop()
  const missing = hostSound('/nowhere/sound', log)
  missing.look(0, hot)
  await vi.waitFor(() => expect(logged.at(-1)).toMatchObject({ program: '/nowhere/sound', problem: expect.stringContaining('ENOENT') }))
})
