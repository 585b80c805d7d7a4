import { describe, expect, it } from 'vitest'
import type { Phase, Role } from '../../../../server/contract/vocabulary.ts'
import type { Telling } from '../../../../server/domain/alarms/board.ts'
import { judgeSilence, judgeStuck, judgeSwapped } from '../../../../server/domain/alarms/probes.ts'
import type { Scene } from '../../../../server/domain/alarms/scene.ts'

const at = Date.UTC(2026, 2, 1, 12)
const minute = 60_000

interface Probe {
  role?: Role
  heardAgoS?: number
  changedAgoMin?: number
  periodS?: number
  faulty?: boolean
}

interface Setting {
  past?: Partial<Record<Role, number>>
  channels?: Record<string, Probe>
  phase?: Phase
  established?: boolean
  tended?: boolean
}

function sceneOf({ past = {}, channels = {}, phase = 'vinegar', established = false, tended = true }: Setting): Scene {
  const history = (value: number | undefined) => ({ minute: 0, values: value === undefined ? [] : Array<number>(10).fill(value) })
  const roles = ['firebox', 'wall', 'outlet', 'smoke'] as const
  const scene = {
    look: { at, past: Object.fromEntries(roles.map((role) => [role, history(past[role])])) },
    phase,
    fire: { established },
    tended,
    lostNodes: {},
    channels: Object.fromEntries(
      Object.entries(channels).map(([id, { role = 'wall', heardAgoS = 1, changedAgoMin = 0, periodS = 5, faulty = false }]) => [
        id,
        {
          role,
          node: id.split('/')[1],
          changedAt: at - changedAgoMin * minute,
          faultSince: faulty ? at : null,
          track: { heardMs: at - heardAgoS * 1000, periodS },
        },
      ]),
    ),
  }
  return scene as unknown as Scene
}

function told(judge: (scene: Scene, tell: (telling: Telling) => void) => void, setting: Setting): Telling[] {
  const heard: Telling[] = []
  judge(sceneOf(setting), (telling) => heard.push(telling))
  return heard
}

// Instrument facts 1.5: thermocouples with their legs crossed read colder as they warm; the margins are common practice, no source.
describe('probes that changed places', () => {
  const found = (past: Setting['past'], established = false) => {
    const [telling] = told(judgeSwapped, { past: past ?? {}, established })
    return [telling!.sign, ...telling!.because.map(({ code }) => code)]
  }
  it.each<[string, Setting['past'], string[]]>([
    ['vapour leaves hotter than the fire', { outlet: 130, firebox: 60 }, ['abnormal', 'outlet-over-firebox']],
    ['not far enough over the fire', { outlet: 130, firebox: 75 }, ['normal']],
    ['a cool kiln whose fire is out', { outlet: 110, firebox: 30 }, ['normal']],
    ['vapour leaves hotter than it came', { outlet: 70, smoke: 35 }, ['abnormal', 'outlet-over-smoke']],
    ['not far enough over the smoke', { outlet: 70, smoke: 45 }, ['normal']],
    ['a cold pipe in cold smoke', { outlet: 55, smoke: 20 }, ['normal']],
    ['a wall far hotter than a fire that never burnt', { wall: 260, firebox: 50 }, ['abnormal', 'wall-over-firebox']],
    ['a wall not far enough over it', { wall: 260, firebox: 70 }, ['normal']],
    ['a wall that is not hot', { wall: 240, firebox: 20 }, ['normal']],
    ['crossed legs', { wall: -26 }, ['abnormal', 'legs-crossed']],
    ['a frosty morning', { wall: -20, outlet: -20, firebox: -20, smoke: -20 }, ['normal']],
  ])('%s', (_name, past, expected) => expect(found(past)).toEqual(expected))
  it('a wall over a fire that once burnt is a fire that went out', () => {
    expect(found({ wall: 260, firebox: 50 }, true)).toEqual(['normal'])
  })
  it('what is not heard cannot be judged', () => expect(found({})).toEqual(['unknown']))
})

describe('a number that never moves', () => {
  const sign = (probe: Probe, phase: Phase = 'vinegar') => told(judgeStuck, { channels: { 'yard/n1/x': probe }, phase })[0]!.sign
  it('is stuck after three quarters of an hour of fire, and not before', () => {
    expect(sign({ changedAgoMin: 44 })).toBe('normal')
    expect(sign({ changedAgoMin: 46 })).toBe('abnormal')
  })
  it.each<[string, Probe]>([
    ['the air', { role: 'ambient' }],
    ['the bottle', { role: 'bottle' }],
    ['carbon monoxide', { role: 'co' }],
    ['a probe that is read every two minutes', { periodS: 120 }],
    ['one that has a fault of its own', { faulty: true }],
    ['one that is not heard', { heardAgoS: 121 }],
  ])('is none where it may stand still: %s', (_name, probe) => expect(sign({ changedAgoMin: 60, ...probe })).toBe('normal'))
  it.each<Phase>(['idle', 'cold', 'cooling', 'failed'])('is none where no fire moves it: %s', (phase) => {
    expect(sign({ changedAgoMin: 60 }, phase)).toBe('normal')
  })
})

describe('silence', () => {
  const signs = (channels: Record<string, Probe>, tended = true) =>
    told(judgeSilence, { channels, tended }).map(({ alarm, sign, quiet }) => `${alarm} ${sign}${quiet === true ? ' quiet' : ''}`)
  it('is judged by the period of the probe, six of which may pass', () => {
    expect(signs({ 'y/a/wall': { heardAgoS: 41 } })).toContain('probe-silent abnormal')
    expect(signs({ 'y/a/wall': { heardAgoS: 119, periodS: 20 } })).toContain('probe-silent normal')
    expect(signs({ 'y/a/wall': { heardAgoS: 121, periodS: 20 } })).toContain('probe-silent abnormal')
  })
  it('of one probe among others is its own, of all of a node is the node', () => {
    const one = { 'y/a/wall': { heardAgoS: 90 }, 'y/a/outlet': {} }
    expect(signs(one)).toEqual(['node-lost normal', 'probe-silent abnormal', 'probe-silent normal'])
    const all = { 'y/a/wall': { heardAgoS: 90 }, 'y/a/outlet': { heardAgoS: 90 } }
    expect(signs(all)).toEqual(['node-lost abnormal', 'probe-silent abnormal quiet', 'probe-silent abnormal quiet'])
  })
  it('is nobody’s while nobody tends the kiln', () => {
    expect(signs({ 'y/a/wall': { heardAgoS: 90 } }, false).every((said) => said.endsWith('quiet'))).toBe(true)
  })
})
