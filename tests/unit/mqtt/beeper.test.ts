import { describe, expect, it } from 'vitest'
import type { NodeView } from '../../../server/contract/live.ts'
import { Beeper, buzzersIn } from '../../../server/mqtt/beeper.ts'
import type { Said } from '../../../server/mqtt/broker.ts'

const node = (more: Partial<NodeView>): NodeView => ({
  node: 'yard/b1',
  state: 'ready',
  lastHeard: 0,
  boot: 1,
  clock: 'none',
  hardware: 'buzzer',
  channels: [],
  samples: 0,
  duplicates: 0,
  conflicts: 0,
  refused: {},
  ...more,
})

describe('buzzers in reach', () => {
  it('are those that say so, or that have no probe', () => {
    const list = [
      node({}),
      node({ node: 'yard/lamp', hardware: 'esp8266' }),
      node({ node: 'yard/n1', hardware: 'esp32', channels: ['yard/n1/wall'] }),
    ]
    expect(buzzersIn(list)).toEqual(['yard/b1', 'yard/lamp'])
  })
  it('not those that are lost, nor one that never told what it is', () => {
    expect(buzzersIn([node({ state: 'lost' }), node({ hardware: '' })])).toEqual([])
  })
})

describe('the beep', () => {
  const said: Said[] = []
  const beeper = new Beeper({ root: 'firing', site: 'yard' }, (one) => said.push(one))
  beeper.beep(['yard/b1', 'yard/b2'], 1000)
  const ids = said.map(({ payload }) => (JSON.parse(payload) as { id: string }).id)
  const ack = (name: string, document: unknown) =>
    beeper.heard({ topic: `firing/1/yard/${name}/ack`, payload: new TextEncoder().encode(JSON.stringify(document)) })

  it('is a command of the wire format to each', () => {
    expect(said.map(({ topic, payload }) => [topic, (JSON.parse(payload) as { do: string }).do])).toEqual([
      ['firing/1/yard/b1/cmd', 'beep'],
      ['firing/1/yard/b2/cmd', 'beep'],
    ])
  })
  it('waits for the answer of the one that was asked', () => {
    ack('b2', { id: ids[0], ok: true })
    ack('b1', { id: 'another', ok: true })
    beeper.heard({ topic: 'firing/1/yard/b1/ack', payload: new Uint8Array([0xff, 0x7b]) })
    expect(beeper.view().map(({ answer }) => answer)).toEqual(['waiting', 'waiting'])
    ack('b1', { id: ids[0], ok: true })
    ack('b2', { id: ids[1], ok: false })
    expect(beeper.view().map(({ answer }) => answer)).toEqual(['done', 'cannot'])
  })
})
