import { expect, it } from 'vitest'
import { filterMatches } from '../../../server/mqtt/forwarding.ts'

// MQTT 3.1.1, 4.7.1 and 4.7.2: its own examples
it.each([
  ['sport/tennis/player1/#', 'sport/tennis/player1', true],
  ['sport/tennis/player1/#', 'sport/tennis/player1/ranking', true],
  ['sport/tennis/player1/#', 'sport/tennis/player1/score/wimbledon', true],
  ['sport/#', 'sport', true],
  ['#', 'sport/tennis', true],
  ['sport/tennis/+', 'sport/tennis/player1', true],
  ['sport/tennis/+', 'sport/tennis/player1/ranking', false],
  ['sport/+', 'sport', false],
  ['sport/+', 'sport/', true],
  ['+/+', '/finance', true],
  ['/+', '/finance', true],
  ['+', '/finance', false],
  ['#', '$SYS/a', false],
  ['+/monitor/Clients', '$SYS/monitor/Clients', false],
  ['$SYS/#', '$SYS/monitor/Clients', true],
  ['$SYS/monitor/+', '$SYS/monitor/Clients', true],
  ['ACCOUNTS', 'Accounts', false],
  ['/finance', 'finance', false],
])('%s and %s: %s', (filter, topic, match) => {
  expect(filterMatches(filter, topic)).toBe(match)
})
