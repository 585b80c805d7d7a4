import { describe, expect, it } from 'vitest'
import { faultKinds, faultsOf, spoil } from '../../../server/simulator/nodes/faults.ts'
import { readFlags, usage } from '../../../server/simulator/nodes/flags.ts'

describe('the command line', () => {
  it('has defaults and reads times', () => {
    expect(readFlags([])).toMatchObject({ broker: 'mqtt://127.0.0.1:1883', site: 'yard', node: 'n1', speed: 1, fromS: null })
    expect(readFlags(['--from=-10m', '--to', '1.5h'])).toMatchObject({ fromS: -600, toS: 5400 })
  })

  it.each([
    [['--colour', 'red'], /--colour/],
    [['--speed', '900'], /--speed 900.*1 to 600/],
    [['--speed', ''], /--speed/],
    [['--node', 'server'], /service itself/],
    [['--site', 'Yard 1'], /--site/],
    [['--broker', 'localhost'], /mqtt:\/\//],
    [['--from', 'noon'], /--from noon/],
    [['--kind', 'lucky'], /--kind lucky.*let-run/],
    [['--faults', 'quake@1h'], /quake@1h/],
    [['--faults', 'reboot@soon'], /time/],
  ] as const)('refuses %j in one sentence', (args, sentence) => {
    expect(() => readFlags([...args])).toThrow(sentence)
  })

  it('lists every fault in its help', () => {
    expect(readFlags(['--help'])).toBeNull()
    for (const kind of Object.keys(faultKinds)) expect(usage).toContain(kind)
  })
})

describe('faults on demand', () => {
  const row = [
    { n: 'firebox', v: 600 },
    { n: 'wall', v: 100 },
    { n: 'wall/cj', v: 25 },
  ]
  const at = (text: string, atS: number) => spoil(row, atS, 10, faultsOf(text), new Map([['wall', 90]]))

  it('hold for their time and no longer', () => {
    expect(at('probe-open@1h+5m', 3599)).toEqual(row)
    expect(at('probe-open@1h+5m', 3600)).toContainEqual({ n: 'wall', vs: 'fault:open' })
    expect(at('probe-open@1h+5m', 3900)).toEqual(row)
  })

  it('never leave the last number beside a fault', () => {
    expect(at('probe-short@0s', 10).filter(({ n }) => n.startsWith('wall'))).toEqual([{ n: 'wall', vs: 'fault:short-gnd' }])
  })

  it('do what their names say', () => {
    expect(at('probe-silent@0s:firebox', 0).map(({ n }) => n)).toEqual(['wall', 'wall/cj'])
    expect(at('probe-stuck@0s', 0)).toContainEqual({ n: 'wall', v: 90 })
    expect(at('spike@0s', 5)).toContainEqual({ n: 'wall', v: 350 })
    expect(at('spike@0s', 15)).toContainEqual({ n: 'wall', v: 100 })
    expect(at('probe-swapped@0s:wall/firebox', 0)).toEqual([
      { n: 'wall', v: 600 },
      { n: 'firebox', v: 100 },
      { n: 'firebox/cj', v: 25 },
    ])
  })
})
