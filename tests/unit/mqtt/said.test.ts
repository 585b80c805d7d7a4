import { expect, it } from 'vitest'
import { sayAlert, sayBeat, sayCall, sayCommand, sayState, sayTime } from '../../../server/mqtt/said.ts'

// Topics, QoS, retain and bodies as the wire format prints them (firmware-notes).

const where = { root: 'firing', site: 'yard' }
const at = 1_772_000_000_250

it('says the service topics of the contract', () => {
  const said = [
    sayState(where, 'online', at),
    sayTime(where, at),
    sayBeat(where, 3, true),
    sayAlert(where, 'urgent', 'condenser-hot', at, false, 9),
    sayAlert(where, 'warning', 'condenser-warm', at, true, 10),
    sayAlert(where, 'none', '', at, false, 11),
    sayCall(where, 'k1', 'f1', 'stop-collecting', at),
    sayCommand(where, 'n1', 'c7', 'rebirth'),
  ]
  expect(
    said.map(({ topic, payload, qos, retain }) => [topic.slice('firing/1/yard/'.length), qos, retain, JSON.parse(payload) as unknown]),
  ).toEqual([
    ['server/state', 1, true, { s: 'online', since: 1_772_000_000 }],
    ['server/time', 0, false, { t: 1_772_000_000.25 }],
    ['server/beat', 0, false, { seq: 3, firing: true }],
    ['server/alert', 1, true, { level: 'urgent', code: 'condenser-hot', since: 1_772_000_000, sound: 3, seq: 9 }],
    ['server/alert', 1, true, { level: 'warning', code: 'condenser-warm', since: 1_772_000_000, sound: 0, seq: 10 }],
    ['server/alert', 1, true, { level: 'none', code: '', since: 1_772_000_000, sound: 0, seq: 11 }],
    ['server/call/k1', 1, true, { firing: 'f1', do: 'stop-collecting', since: 1_772_000_000 }],
    ['n1/cmd', 1, false, { id: 'c7', do: 'rebirth' }],
  ])
})
