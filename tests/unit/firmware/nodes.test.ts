import { spawnSync } from 'node:child_process'
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { sayAlert, sayBeat, sayCommand, sayState } from '../../../server/mqtt/said.ts'
import { soundOf, startBuzzer, stepBuzzer, type BuzzerInput } from '../../../server/simulator/buzzer/rules.ts'
import type { Said } from './door.ts'
import { throughTheDoor } from './door.ts'

const notes = new URL('../../../firmware-notes/', import.meta.url).pathname
const has = (program: string) => spawnSync('sh', ['-c', `command -v ${program}`]).status === 0

// what is absent is named, so that nobody takes silence for a pass
for (const program of ['python3', 'g++']) if (!has(program)) console.warn(`not run here, because ${program} is absent`)

let folder = ''
let heard = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'nodes-'))
  heard = join(folder, 'heard')
  // stands in for the sender: writes down what it would have sent
  writeFileSync(
    join(folder, 'mosquitto_pub'),
    `#!/bin/sh\nwhile [ $# -gt 0 ]; do case $1 in -t) t=$2; shift;; -m) m=$2; shift;; esac; shift; done\nprintf '%s %s\\n' "$t" "$m" >>'${heard}'\n`,
  )
  // and for the listener: gives what the service says, if anything
  writeFileSync(join(folder, 'mosquitto_sub'), `#!/bin/sh\n[ -z "$ORDERS" ] || printf '%s\\n' "$ORDERS"\nexec sleep 60\n`)
  for (const program of ['mosquitto_pub', 'mosquitto_sub']) chmodSync(join(folder, program), 0o755)
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function run(command: string, env: Record<string, string> = {}): Said[] {
  writeFileSync(heard, '')
  const result = spawnSync('sh', ['-c', command], {
    encoding: 'utf8',
    env: { ...process.env, PATH: `${folder}:${process.env['PATH']}`, ...env },
  })
  expect(result.stderr).toBe('')
  return linesOf(readFileSync(heard, 'utf8'))
}

function linesOf(text: string): Said[] {
  return text
    .trim()
    .split('\n')
    .map((line) => ({ topic: line.slice(0, line.indexOf(' ')), text: line.slice(line.indexOf(' ') + 1) }))
}

describe('shell', () => {
  it('the first reading of README.md gives three probes', () => {
    const block = /<!-- run: first reading -->\n+```sh\n([\s\S]*?)```/.exec(readFileSync(join(notes, 'README.md'), 'utf8'))
    const { samples, refused } = throughTheDoor(run(block?.[1] ?? 'false'))
    expect(refused).toEqual([])
    expect(samples.map(({ channel, value }) => [channel, value])).toEqual([
      ['yard/try/firebox', 20],
      ['yard/try/wall', 21],
      ['yard/try/outlet', 22],
    ])
  })

  it.each([
    ['31250', { value: 31.25, quality: 'good' }],
    ['-4062', { value: -4.062, quality: 'good' }],
    ['85000', { value: null, quality: 'fault:not-converted' }],
    [null, { value: null, quality: 'fault:bus' }],
  ])('the one-probe node with %s in the kernel file', (milli, expected) => {
    const sensor = join(folder, 'temperature')
    rmSync(sensor, { force: true })
    if (milli !== null) writeFileSync(sensor, `${milli}\n`)
    const env = { SENSOR: sensor, COUNTER: join(folder, `boot-${milli}`), EVERY: '0.1', ROUNDS: '2' }
    const said = run(join(notes, 'script/one-probe.sh'), env)
    const { samples, refused, nodes } = throughTheDoor(said)
    expect(refused).toEqual([])
    expect(samples).toHaveLength(2)
    expect(samples[0]).toMatchObject({ channel: 'yard/n1/outlet', ...expected })
    expect(nodes[0]?.boot).toBe(1)
    // a second start has another boot number
    expect(run(join(notes, 'script/one-probe.sh'), env)[0]?.text).toContain('"boot":2')
  })
})

const where = { root: 'firing', site: 'yard' }
const rebirth = sayCommand(where, 'n1', 'c1', 'rebirth').payload
const beep = sayCommand(where, 'n1', 'c2', 'beep').payload
const acks = (said: readonly Said[]): unknown[] => said.filter(({ topic }) => topic.endsWith('/ack')).map(({ text }) => JSON.parse(text))

it('the shell node is born anew when the service asks for it, and says no to what it cannot do', () => {
  const env = { SENSOR: join(folder, 'none'), COUNTER: join(folder, 'boot-anew'), EVERY: '0.4', ROUNDS: '4', ORDERS: `${rebirth}\n${beep}` }
  const said = run(join(notes, 'script/one-probe.sh'), env)
  expect(acks(said)).toEqual([
    { id: 'c1', ok: true },
    { id: 'c2', ok: false },
  ])
  const births = said.filter(({ topic }) => topic.endsWith('/info')).map(({ text }) => (JSON.parse(text) as { boot: number }).boot)
  expect(births).toEqual([1, 2])
  const { samples, refused, nodes } = throughTheDoor(said)
  expect([refused, samples.length]).toEqual([[], 4])
  expect(nodes[0]).toMatchObject({ boot: 2, conflicts: 0, duplicates: 0 })
})

/**
 * What a buzzer hears, and what it plays: wire-format.md, section 8 (8 s without a beat; 75 °C for 15 s, until under 73 °C; only a beat ends
 * it; a probe that cannot be read changes nothing). [ms, what, the rest]; `sound` is asked, with the answer.
 */
const buzzed: [at: number, what: string, rest: string][] = [
  [0, 'link', 'up'],
  [0, 'beat', sayBeat(where, 1, false).payload],
  [20000, 'sound', '0'], // nothing runs: silence is no alarm
  [21000, 'beat', sayBeat(where, 2, true).payload],
  [21500, 'alert', sayAlert(where, 'warning', 'condenser-warm', 0, false, 1).payload],
  [28999, 'sound', '2'],
  [29000, 'sound', '2 alone'],
  [30000, 'beat', sayBeat(where, 3, true).payload],
  [30100, 'sound', '2'],
  [30200, 'alert', sayAlert(where, 'warning', 'condenser-warm', 0, true, 2).payload],
  [30300, 'sound', '0'],
  [30400, 'outlet', '90'],
  [46000, 'beat', sayBeat(where, 4, true).payload],
  [46100, 'sound', '0'], // hot, but the service knows and decides
  [47000, 'link', 'down'],
  [47001, 'sound', '2 alone'],
  [47500, 'link', 'up'],
  [47600, 'sound', '2 alone'], // a link that is back is no beat
  [54000, 'sound', '2 alone'],
  [54100, 'outlet', '73'],
  [54200, 'sound', '2 alone'],
  [54300, 'outlet', 'fault'],
  [54400, 'sound', '2 alone'],
  [54500, 'outlet', '72.9'],
  [54600, 'sound', '0 alone'],
  [55000, 'outlet', '75'],
  [69999, 'sound', '0 alone'],
  [70000, 'sound', '2 alone'],
  [70100, 'beep', ''],
  [72099, 'sound', '2 alone test'],
  [72100, 'sound', '2 alone'],
  [73000, 'beat', sayBeat(where, 5, true).payload],
  [73001, 'state', sayState(where, 'offline', 0).payload],
  [73002, 'sound', '2 alone'],
]
const plays = buzzed.filter(([, what]) => what === 'sound').map(([, , answer]) => answer)

it('the reference buzzer plays so', () => {
  let state = startBuzzer(0, false)
  const heardSounds: string[] = []
  for (const [at, what, rest] of buzzed) {
    const { pattern, alone, test } = soundOf(state, at)
    if (what === 'sound') heardSounds.push(`${pattern}${alone ? ' alone' : ''}${test ? ' test' : ''}`)
    else state = stepBuzzer(state, buzzerInput(at, what, rest))
  }
  expect(heardSounds).toEqual(plays)
})

function buzzerInput(at: number, what: string, rest: string): BuzzerInput {
  if (what === 'link') return { kind: 'link', at, up: rest === 'up' }
  if (what === 'outlet') return { kind: 'outlet', at, celsius: rest === 'fault' ? null : Number(rest) }
  if (what === 'beep') return { kind: 'beep', at }
  const said = JSON.parse(rest) as { firing: boolean; level: 'warning'; sound: number; s: string }
  if (what === 'beat') return { kind: 'beat', at, firing: said.firing }
  return what === 'state'
    ? { kind: 'server', at, online: said.s === 'online' }
    : { kind: 'alert', at, level: said.level, sound: said.sound }
}

describe.runIf(has('python3'))('Python', () => {
  it('is born anew when the service asks for it, and says no to what it cannot do', () => {
    const input = `${rebirth}\n${beep}\nnonsense\n`
    const { stdout, stderr } = spawnSync('python3', [join(notes, 'script/three_probes.py'), '--print'], { encoding: 'utf8', input })
    expect(stderr).toBe('')
    const said = linesOf(stdout)
    expect(acks(said)).toEqual([
      { id: 'c1', ok: true },
      { id: 'c2', ok: false },
    ])
    const { samples, refused, nodes } = throughTheDoor(said)
    expect(refused).toEqual([])
    expect(nodes[0]).toMatchObject({ boot: 2, conflicts: 0, duplicates: 0 })
    expect(samples.filter(({ channel }) => channel === 'yard/n1/outlet')).toHaveLength(5)
  })

  it('the buzzer plays as the page tells, with a limit of its own', () => {
    const program = `
import sys
sys.path.insert(0, sys.argv[1])
from buzzer import Buzzer
one = Buzzer(0, False)
for line in sys.stdin:
    at, what, rest = line.rstrip("\\n").split(" ", 2)
    at = int(at) / 1000
    if what == "link": one.link(rest == "up", at)
    elif what == "outlet": one.outlet(None if rest == "fault" else float(rest), at)
    elif what == "beep": one.beep(at)
    elif what == "sound":
        pattern, alone, test = one.sound(at)
        print(str(pattern) + (" alone" if alone else "") + (" test" if test else ""))
    else: one.hear(what, rest, at)
`
    const input = buzzed.map((line) => `${line.join(' ')}\n`).join('')
    const { stdout, stderr } = spawnSync('python3', ['-B', '-c', program, join(notes, 'script')], { encoding: 'utf8', input })
    expect(stderr).toBe('')
    expect(stdout.trim().split('\n')).toEqual(plays)
  })

  it('three probes: the round that fell out comes as backlog, nothing is lost or doubled', () => {
    const { stdout, stderr } = spawnSync('python3', [join(notes, 'script/three_probes.py'), '--print'], { encoding: 'utf8' })
    expect(stderr).toBe('')
    const said = linesOf(stdout)
    expect(said.map(({ topic }) => topic.split('/').at(-1))).toEqual(['info', 'state', 'readings', 'backlog', 'backlog', 'readings'])
    const { samples, refused, nodes } = throughTheDoor(said)
    expect(refused).toEqual([])
    expect(nodes[0]).toMatchObject({ duplicates: 0, conflicts: 0, boot: 1 })
    const of = (channel: string) => samples.filter((s) => s.channel === `yard/n1/${channel}`)
    expect(of('outlet')).toHaveLength(4)
    // instrument facts 2.1, test vectors: reported 604.25 with 45 is 599.889
    expect(of('firebox')[0]?.value).toBeCloseTo(599.889, 1)
    expect(of('wall').every(({ quality }) => quality === 'fault:open')).toBe(true)
  })
})

describe.runIf(has('g++'))('C++, the portable part compiled here', () => {
  const ask = (question: string) => spawnSync(join(folder, 'check'), { input: `${question}\n`, encoding: 'utf8' }).stdout.trim()

  beforeAll(() => {
    const built = spawnSync(
      'g++',
      ['-std=c++17', '-Wall', '-Wextra', '-Werror', '-O1', '-o', join(folder, 'check'), join(notes, 'cpp/check/check.cpp')],
      {
        encoding: 'utf8',
      },
    )
    expect(built.stderr).toBe('')
  })

  // instrument facts 2.1 (maker's bit patterns and test vectors), 2.2, 2.3, 2.5
  it.each([
    ['max31855 64007F00', '1600 127'],
    ['max31855 3E801900', '1000 25'],
    ['max31855 064C6490', '100.75 100.5625'],
    ['max31855 FFFCFFF0', '-0.25 -0.0625'],
    ['max31855 FFF0FF00', '-1 -1'],
    ['max31855 F060C900', '-250 -55'],
    ['max31855 0190EC00', '25 -20'],
    ['max31855 00011901', 'fault:open'],
    ['max31855 00011902', 'fault:short-gnd'],
    ['max31855 00011904', 'fault:short-vcc'],
    ['max31855 FFFFFFFF', 'fault:bus'],
    ['max31855 00000000', 'fault:bus'],
    ['max6675 0000', '0'],
    ['max6675 0320', '25'],
    ['max6675 0C88', '100.25'],
    ['max6675 7FF8', '1023.75'],
    ['max6675 0004', 'fault:open'],
    ['max6675 FFFF', 'fault:bus'],
    ['max31856 19 00 64 00 00 00', '1600 25'],
    ['max31856 64 90 06 4F 00 00', '100.9375 100.5625'],
    ['max31856 FF F0 FF FF 00 00', '-0.0625 -0.0625'],
    ['max31856 C9 00 F0 60 00 00', '-250 -55'],
    ['max31856 19 00 01 90 00 01', 'fault:open'],
    ['max31856 FF FF FF FF FF FF', 'fault:bus'],
    ['ds18b20 98 01 4B 46 7F FF 08 10 22', '25.5'],
    ['ds18b20 50 05 4B 46 7F FF 0C 10 1C', 'fault:not-converted'],
    ['ds18b20 98 01 4B 46 7F FF 08 10 23', 'fault:crc'],
    ['ds18b20 FF FF FF FF FF FF FF FF FF', 'fault:bus'],
    ['ds18b20 00 00 00 00 00 00 00 00 00', 'fault:bus'],
    ['crc 123456789', String(0xa1)],
  ])('%s is %s', (question, answer) => {
    expect(ask(question)).toBe(answer)
  })

  it.each([
    [rebirth, 'rebirth {"id":"c1","ok":true}'],
    [beep, 'beep {"id":"c2","ok":true}'],
    ['{ "do" : "dance", "id" : "do" }', 'unknown {"id":"do","ok":false}'],
    ['nonsense', 'unknown {"id":"","ok":false}'],
  ])('takes the order %s', (order, answer) => {
    expect(ask(`order ${order}`)).toBe(answer)
  })

  it('the buzzer plays as the page tells, with a limit of its own', () => {
    expect(ask(`buzzer\n${buzzed.map((line) => line.join(' ')).join('\n')}\nend`).split('\n')).toEqual(plays)
  })

  it('composes packs and back-fill that the decoder takes; what overflowed the buffer is counted', () => {
    const lines = ask('story').split('\n')
    expect(lines.at(-1)).toBe('lost 1')
    const said = lines
      .slice(0, -1)
      .map((line) => ({ topic: `firing/1/yard/n1/${line.slice(0, line.indexOf(' '))}`, text: line.slice(line.indexOf(' ') + 1) }))
    const sketch = readFileSync(join(notes, 'cpp/three-probes/three-probes.ino'), 'utf8')
    const birth = [...(/const std::string birth =([\s\S]*?);/.exec(sketch)?.[1]?.matchAll(/"((?:[^"\\]|\\.)*)"/g) ?? [])]
      .map(([, part = '']) => part.replaceAll('\\"', '"'))
      .join('')
    const { samples, refused, nodes } = throughTheDoor([{ topic: 'firing/1/yard/n1/info', text: `{"boot":17,${birth}}` }, ...said])
    expect(refused).toEqual([])
    expect(nodes[0]).toMatchObject({ boot: 17, conflicts: 0, duplicates: 0 })
    const wall = samples.filter(({ channel }) => channel === 'yard/n1/wall')
    expect(wall.map(({ late }) => late)).toEqual([false, true, true, false])
    // instrument facts 2.1, test vectors: reported 296.75 with 40 is 300.020
    expect(wall[0]?.value).toBeCloseTo(300.02, 1)
    expect(samples.find(({ channel }) => channel === 'yard/n1/outlet')?.value).toBe(25.5)
  })
})
