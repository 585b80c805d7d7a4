import { spawnSync } from 'node:child_process'
import { chmodSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
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
  chmodSync(join(folder, 'mosquitto_pub'), 0o755)
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

describe.runIf(has('python3'))('Python', () => {
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
