import { readdirSync, readFileSync } from 'node:fs'
import { gunzipSync, gzipSync } from 'node:zlib'
import { connectPacket, publishPacket } from '../integration/mqtt/raw-client.ts'
import { linesOf } from '../../server/recordings/in/look.ts'
import { settingsSchema } from '../../server/settings/schema.ts'
import { storyHeader, storyLines } from '../support/firing-story.ts'

const corpora = 'tests/corpora'

/** The examples of the wire format, and the JSON suite (see tests/corpora). */
export const jsonSeeds: Buffer[] = [
  ...[...readFileSync('firmware-notes/wire-format.md', 'utf8').matchAll(/```json\n([\s\S]*?)```/g)].map(([, text]) =>
    Buffer.from(text ?? ''),
  ),
  ...['{"outlet":81.5}', '{"outlet":81.5,"wall":142,"t":12}', '42.5', '{"wall":"fault:open"}'].map((text) => Buffer.from(text)),
  ...Object.values(JSON.parse(gunzipSync(readFileSync(`${corpora}/json-test-suite/parsing.json.gz`)).toString()) as Record<string, string>)
    .map((text) => Buffer.from(text, 'base64'))
    .filter(({ length }) => length < 2000),
]

interface Sequence {
  connect?: boolean
  ver?: number
  msgs: { type: string; payload: string }[]
}

/** Whole conversations of a client, from its CONNECT on. */
export const packetSeeds: Buffer[] = [
  ...['a', 'readings', 'cmd'].map((kind) =>
    Buffer.concat([
      connectPacket('n1'),
      publishPacket(`firing/1/yard/n1/${kind}`, '{"outlet":81.5}', 1, 7),
      publishPacket('firing/1/yard/n1/state', '{"s":"ready"}', 0),
      Buffer.from('820a00010005612f622f6301', 'hex'),
      Buffer.from('c000', 'hex'),
      Buffer.from('e000', 'hex'),
    ]),
  ),
  ...readdirSync(`${corpora}/mqtt-packet-sequences`)
    .filter((name) => name.endsWith('.json'))
    .flatMap((name) => JSON.parse(readFileSync(`${corpora}/mqtt-packet-sequences/${name}`, 'utf8')) as { tests: Sequence[] }[])
    .flatMap(({ tests }) => tests)
    .map(({ connect = true, msgs }, index) => {
      const sent = msgs.filter(({ type }) => type === 'send').map(({ payload }) => Buffer.from(payload.replaceAll(' ', ''), 'hex'))
      return Buffer.concat([...(connect ? [connectPacket(`n${index}`)] : []), ...sent])
    }),
]

const story = linesOf({ header: storyHeader, lines: storyLines(0.1) })
export const recordingSeeds: Buffer[] = [
  Buffer.from(story),
  gzipSync(story),
  Buffer.from(linesOf({ header: storyHeader, lines: storyLines(0.01) })),
  Buffer.from(
    '{"recording":1}\n{"at":"2026-03-01T07:30:00Z","action":"light"}\n{"at":"2026-03-01T07:40:00Z","action":"note","text":"x"}\n',
  ),
]

export const csvSeeds: Buffer[] = [
  'Time;Drum wall C;Smoke;Note\n2026-03-01 14:30;21,5;30;lit, at last\n2026-03-01 14:31;;31;\n',
  'time,wall,outlet,note\n2026-03-01T07:00:00Z,20,21.5,"a ""quoted"" word\nin two lines"\n2026-03-01T07:00:10Z,20.5,21.75,\n',
  'minutes\toutlet °F\n0\t70\n1.5\t71\n',
  '\ufefftimestamp,core,bottle,co\r\n1772344800,20,0.5,3\r\n1772344810,21,0.6,4\r\n',
].map((text) => Buffer.from(text))

export const settingsSeeds: Buffer[] = [settingsSchema.parse({}), { kilns: [{ kiln: 'kiln-2' }] }, { version: 0, port: 1 }].map((value) =>
  Buffer.from(JSON.stringify(value)),
)
