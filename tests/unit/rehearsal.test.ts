import { afterEach, describe, expect, it, vi } from 'vitest'
import type { RehearsalScene, RehearsalView } from '../../server/contract/setup.ts'
import { Rehearsal } from '../../server/rehearsal.ts'

const now = Date.UTC(2026, 4, 5, 9)
const open: Rehearsal[] = []
afterEach(() => {
  for (const one of open.splice(0)) one.end()
  vi.useRealTimers()
})

function begin(scene: RehearsalScene, onChange: (rehearsal: Rehearsal) => void = () => {}): Rehearsal {
  const rehearsal = new Rehearsal({
    ...{ scene, kiln: 'kiln-1', site: 'yard', root: 'firing', buzzers: 1, now },
    onChange: () => onChange(rehearsal),
  })
  open.push(rehearsal)
  rehearsal.start()
  return rehearsal
}

const told = (scene: RehearsalScene): Promise<{ view: RehearsalView; rehearsal: Rehearsal }> =>
  new Promise((resolve) => begin(scene, (rehearsal) => resolve({ view: rehearsal.view(), rehearsal })))

describe('a rehearsal without fire', () => {
  // limits: server/domain/alarms/tables, delays of instrument facts 6.3 and reliability 7.1
  it.each([
    ['probe', 'probe-fault', 'notice', 30, 60],
    ['condenser', 'condenser-warm', 'warning', 60, 30 * 60],
    ['fire', 'fire-dying', 'warning', 60, 60 * 60],
  ] as const)('%s: the rules tell %s', async (scene, alarm, priority, least, most) => {
    const { view, rehearsal } = await told(scene)
    expect(view).toMatchObject({ scene, state: 'sounding', told: { alarm, priority } })
    expect(view.told?.afterS).toBeGreaterThanOrEqual(least)
    expect(view.told?.afterS).toBeLessThanOrEqual(most)
    expect(rehearsal.kilnView()?.alarms.map((one) => one.alarm)).toContain(alarm)
    rehearsal.end()
    expect(rehearsal.view().state).toBe('over')
    expect(rehearsal.kilnView()).toBeNull()
  })

  it('the silent service is silent for longer than a buzzer bears, then over', () => {
    vi.useFakeTimers()
    const rehearsal = begin('service')
    expect(rehearsal.view().state).toBe('silent')
    vi.advanceTimersByTime(11_000) // wire format: a buzzer sounds 8 s after the last beat, which may be 3 s old
    expect(rehearsal.view().state).toBe('silent')
    vi.advanceTimersByTime(10_000)
    expect(rehearsal.view().state).toBe('over')
  })

  it('ends by itself when everybody has gone', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] })
    const { rehearsal } = await told('probe')
    vi.advanceTimersByTime(200_000)
    expect(rehearsal.view().state).toBe('over')
  })
})
