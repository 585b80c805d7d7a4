import { describe, expect, it } from 'vitest'
import type { Act, Action } from '../../../../server/contract/actions.ts'
import type { Output } from '../../../../server/contract/fold.ts'
import { toldOf } from '../../../../server/domain/lots/told.ts'

const hour = 3_600_000
const act = (atH: number, action: Action, more: Partial<Act> = {}): Act => ({
  id: `${action.action}-${String(atH)}`,
  at: atH * hour,
  doneAt: atH * hour,
  act: action,
  ...more,
})
const alarm = (alarm: 'condenser-warm' | 'fire-dying' | 'node-lost', priority: 'notice' | 'warning', state = 'unacknowledged'): Output =>
  ({ kind: 'alarm', at: hour, alarm, state, priority, because: [] }) as unknown as Output
const collected = [
  act(2, { action: 'start-collecting' }),
  act(3, { action: 'swap-bottle', litres: 4.5 }),
  act(4, { action: 'swap-bottle', litres: 4.1 }),
  act(4.01, { action: 'stop-collecting' }),
]
const sealed = act(8, { action: 'seal' })

describe('a firing at a glance', () => {
  it('tells the litres of its bottles, its charcoal and what sounded, notices apart and each once', () => {
    const acts = [...collected, sealed, act(30, { action: 'open' }), act(31, { action: 'unload', charcoalKg: 14.2 })]
    const outputs = [
      alarm('condenser-warm', 'warning'),
      alarm('condenser-warm', 'warning', 'normal'),
      alarm('node-lost', 'notice'),
      alarm('condenser-warm', 'warning'),
      alarm('fire-dying', 'warning'),
    ]
    expect(toldOf(acts, outputs, [], 31 * hour)).toEqual({
      bottles: 2,
      litres: 8.6,
      charcoalKg: 14.2,
      end: 'unloaded',
      alarms: ['condenser-warm', 'fire-dying'],
    })
  })

  it('knows bottles that nobody measured from none', () => {
    const unmeasured = [act(2, { action: 'start-collecting' }), act(4, { action: 'stop-collecting' })]
    expect(toldOf(unmeasured, [], [], 9 * hour)).toMatchObject({ bottles: 1, litres: null })
    expect(toldOf([], [], [], 9 * hour)).toMatchObject({ bottles: 0, litres: null, charcoalKg: null })
  })

  it('ends where its log ends; what was taken back was not done', () => {
    const end = (...acts: Act[]): string => toldOf([...collected, ...acts], [], [], 40 * hour).end
    expect(end()).toBe('left')
    expect(end(sealed)).toBe('sealed')
    const opened = act(30, { action: 'open' })
    expect(end(sealed, opened)).toBe('opened')
    expect(end(sealed, opened, act(30.1, { action: 'note', text: '' }, { corrects: opened.id }))).toBe('sealed')
    expect(toldOf([], [], [{ phase: 'failed', from: hour, to: null }], 2 * hour).end).toBe('died')
  })
})
