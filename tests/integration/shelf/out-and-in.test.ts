import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { gunzipSync, gzipSync } from 'node:zlib'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { ImportPreview } from '../../../server/contract/imports.ts'
import type { FiringSummary } from '../../../server/contract/live.ts'
import type { RecordingLine } from '../../../server/contract/recording.ts'
import { contentHash, linesOf } from '../../../server/recordings/in/look.ts'
import { kilnFold } from '../../../server/domain/firing/fold.ts'
import { intakeFold } from '../../../server/domain/intake/fold.ts'
import { play } from '../../../server/recordings/play.ts'
import { readRecording } from '../../../server/recordings/read.ts'
import { asWritten, rowsIn } from '../../../server/recordings/csv/rows.ts'
import { getJson, post } from '../../support/driven-app.ts'
import { storyHeader, storyLines } from '../../support/firing-story.ts'
import { RestSite } from '../../support/rest-site.ts'

const litAt = Date.UTC(2026, 9, 14, 7)
let site: RestSite
let url: string

beforeAll(async () => {
  site = new RestSite(litAt + 40 * 3_600_000)
  url = await site.start()
  await site.finishedFiring('f1', litAt)
  await site.store.putDocument({ kind: 'note', id: 'f1', at: litAt, by: 'operator', json: '{"text":"=cmd|x"}' })
})
afterAll(() => site.stop())

const readRows = (text: string, separator: string) => [...rowsIn(text, separator)]
const send = (path: string, body: Uint8Array | string, type = 'application/octet-stream') =>
  fetch(`${url}api/${path}`, { method: 'POST', headers: { 'content-type': type }, body: Buffer.from(body) })

describe('out', () => {
  test('the document keeps to the schema that the box serves, and the schema refuses what it should', async () => {
    const schema = await getJson<object>(`${url}api/schemas/firing`)
    expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema' })
    const check = new Ajv2020({ validateFormats: false }).compile(schema)
    const document = await getJson<Record<string, unknown>>(`${url}api/firings/f1/document`)
    expect(check(document), JSON.stringify(check.errors)).toBe(true)
    expect(document).toMatchObject({ id: 'f1', demo: true, charge: { massKg: 70, moisturePct: 30 }, notes: [{ by: 'operator' }] })
    expect((document['readings'] as { of: string; t: number[] }[])[0]?.t).toHaveLength(71)
    for (const [name, wrong] of [
      ['phases', [{ phase: 'boiling', from: '2026-10-14T07:00:00Z', to: null }]],
      ['startedAt', 5],
      ['readings', undefined],
    ] as const)
      expect(check({ ...document, [name]: wrong }), name).toBe(false)
  })

  test('a season comes as one archive that tar reads, and each recording in it is taken in as it is', async () => {
    await site.finishedFiring('f0', litAt - 400 * 86_400_000)
    const folder = mkdtempSync(join(tmpdir(), 'kiln-season-'))
    const answer = await fetch(`${url}api/season?from=${Date.UTC(2026, 0)}&to=${Date.UTC(2027, 0)}`)
    expect(answer.headers.get('content-disposition')).toContain('firings-2026-01-01.tar')
    writeFileSync(join(folder, 'season.tar'), Buffer.from(await answer.arrayBuffer()))
    // an outside reader: the tar of the system
    expect(execFileSync('tar', ['-tf', 'season.tar'], { cwd: folder }).toString()).toBe('f1.jsonl.gz\n')
    execFileSync('tar', ['-xf', 'season.tar'], { cwd: folder })
    const recording = gunzipSync(readFileSync(join(folder, 'f1.jsonl.gz'))).toString()
    expect(recording).toBe(await (await fetch(`${url}api/firings/f1/recording`)).text())
    rmSync(folder, { recursive: true })
  })

  test('the plain table is RFC 4180 with ISO times, the local one has semicolons, decimal commas and times of the place', async () => {
    const plain = await fetch(`${url}api/firings/f1/table`)
    expect(plain.headers.get('content-type')).toContain('text/csv')
    const rows = readRows(await plain.text(), ',').map(({ cells }) => cells)
    expect(rows[0]?.slice(0, 3)).toEqual(['time', 'firebox C', 'wall C'])
    const smoke = rows[0]?.indexOf('smoke C') ?? -1
    expect(rows.filter((row) => row[smoke] !== '')).toHaveLength(72)
    expect(rows.find((row) => row.includes('act start-collecting'))?.[0]).toBe('2026-10-14T09:00:00.000Z')
    const local = Buffer.from(await (await fetch(`${url}api/firings/f1/table?preset=local&offset=420`)).arrayBuffer()).toString()
    expect(local.startsWith('\ufefftime;')).toBe(true)
    expect(
      readRows(local, ';')
        .map(({ cells }) => cells)[4]
        ?.slice(0, 6),
    ).toEqual(['2026-10-14 14:06:00', '', '', '', '44,46', ''])
    expect((await fetch(`${url}api/firings/f1/table?preset=blue`)).status).toBe(422)
    expect((await fetch(`${url}api/firings/none/table`)).status).toBe(404)
  })
})

describe('in', () => {
  const text = linesOf({ header: storyHeader, lines: storyLines(0.5) })

  test('a look keeps nothing; keeping puts it on the shelf, once, and it comes out as it went in', async () => {
    const before = (await getJson<FiringSummary[]>(`${url}api/firings`)).length
    const preview = (await (await send('imports/look?name=old.jsonl.gz', gzipSync(text))).json()) as ImportPreview
    expect(preview).toMatchObject({ kind: 'recording', known: false, title: 'Made-up firing', readings: 180, acts: 2, problems: [] })
    expect(await getJson<FiringSummary[]>(`${url}api/firings`)).toHaveLength(before)
    for (const bytes of [gzipSync(text), Buffer.from(text)]) {
      const kept = await send('imports?name=old.jsonl', bytes)
      expect([kept.status, await kept.json()]).toEqual([201, { id: preview.id }])
    }
    const listed = await getJson<FiringSummary[]>(`${url}api/firings`)
    expect(listed).toHaveLength(before + 1)
    expect(listed.find(({ id }) => id === preview.id)).toMatchObject({ demo: true, title: 'Made-up firing' })
    const out = await (await fetch(`${url}api/firings/${preview.id}/recording`)).text()
    expect(contentHash(out)).toBe(contentHash(text))
    const whole = await getJson<{ acts: { act: object }[] }>(`${url}api/firings/${preview.id}`)
    expect(whole.acts.map(({ act }) => act)).toEqual([{ action: 'light' }, { action: 'seal' }])
  })

  test('photographed glasses go out behind the lines and come in again at another box; a replay is the same with and without them', async () => {
    const story = storyLines(0.5)
    const glass: RecordingLine = {
      at: story.at(-1)?.at ?? '',
      id: 'glass-one',
      action: 'glass',
      number: 1,
      drip: 'amber',
      photo: true,
    }
    const lines = [...story, glass]
    const plain = linesOf({ header: { ...storyHeader, title: 'With glasses' }, lines })
    const { id } = (await (await send('imports?name=x.jsonl', plain)).json()) as { id: string }
    // JFIF: the first bytes are what it is known by
    const photo = Buffer.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3, 4, 5])
    const { kiln } = (await getJson<FiringSummary[]>(`${url}api/firings`)).find((one) => one.id === id) ?? { kiln: '' }
    const put = { method: 'PUT', headers: { 'content-type': 'application/octet-stream' }, body: photo }
    expect((await fetch(`${url}api/glasses/${kiln}/glass-one?drip=amber`, put)).status).toBe(204)
    const out = await (await fetch(`${url}api/firings/${id}/recording`)).text()
    expect(out).toBe(`${plain}${JSON.stringify({ picture: 'glass-one', type: 'image/jpeg', base64: photo.toString('base64') })}\n`)
    const folds = { intake: intakeFold, kiln: kilnFold }
    const played = (text: string) => [...play(folds, readRecording(Buffer.from(text)))].map((line) => JSON.stringify(line))
    expect(played(out)).toEqual(played(plain))

    const other = new RestSite(litAt + 40 * 3_600_000)
    const there = await other.start()
    const type = { 'content-type': 'application/octet-stream' }
    const take = (body: string) => fetch(`${there}api/imports?name=x.jsonl`, { method: 'POST', headers: type, body })
    expect(await (await take(out)).json()).toEqual({ id })
    const back = await fetch(`${there}api/glasses/${kiln}/glass-one`)
    expect([back.headers.get('content-type'), Buffer.from(await back.arrayBuffer())]).toEqual(['image/jpeg', photo])
    expect(await (await fetch(`${there}api/firings/${id}/recording`)).text()).toBe(out)
    // what was photographed elsewhere is no choice of this kiln
    expect(await getJson(`${there}api/glasses/${kiln}`)).toEqual({})
    const wrong = await take(out.replace('image/jpeg', 'text/html'))
    expect([wrong.status, await wrong.text()]).toEqual([422, expect.stringContaining(`line ${String(lines.length + 2)}`)])
    await other.stop()
  })

  test('naughty strings as title, notes and names come back as they went in, and are no formulas in a table', async () => {
    const naughty = (JSON.parse(readFileSync('tests/corpora/naughty-strings/blns.json', 'utf8')) as string[]).filter(
      (words) => words !== '',
    )
    const lines: RecordingLine[] = naughty.map((text, second) => ({
      at: new Date(Date.UTC(2026, 4, 1, 7, 0, second)).toISOString(),
      action: 'note',
      text,
    }))
    const title = naughty.find((words) => words.includes('<script>')) ?? ''
    const answer = await send('imports?name=x', linesOf({ header: { ...storyHeader, title }, lines }))
    const { id } = (await answer.json()) as { id: string }
    for (const text of naughty.slice(0, 60))
      expect((await post(`${url}api/documents/note/${id}`, { text, name: text }, 'PUT')).status).toBe(201)
    const document = await getJson<{ title: string; log: { act: { text: string } }[]; notes: { note: object }[] }>(
      `${url}api/firings/${id}/document`,
    )
    expect(document.title).toBe(title)
    expect(document.log.map(({ act }) => act.text)).toEqual(naughty)
    expect(document.notes.map(({ note }) => note)).toEqual(naughty.slice(0, 60).map((text) => ({ text, name: text })))
    const [, ...rows] = readRows(await (await fetch(`${url}api/firings/${id}/table`)).text(), ',')
    const words = rows.filter(({ cells }) => cells.includes('act note')).map(({ cells }) => cells.at(-1) ?? '')
    expect(words.map(asWritten)).toEqual(naughty)
    for (const cell of words) expect(cell).not.toMatch(/^[=+\-@\t\r]/)
  })

  test('a bad row names its line and nothing is kept of the file', async () => {
    const before = (await getJson<FiringSummary[]>(`${url}api/firings`)).length
    const bad = 'time,wall\n2026-03-01T07:30Z,20\n2026-03-01T07:31Z,warm\n'
    const answer = await send('imports?name=log.csv', bad)
    expect(answer.status).toBe(422)
    expect(await answer.json()).toEqual({ problem: 'bad-import', details: [{ path: 'line 3', what: 'bad-number warm' }] })
    expect(await getJson<FiringSummary[]>(`${url}api/firings`)).toHaveLength(before)
    expect(await site.store.documents('recording-file')).toHaveLength(3)
  })

  test.each([
    ['another type', 'imports/look', 'x', 'application/json', 415],
    ['a match that is none', 'imports/look?match={', 'time,wall\n', 'application/octet-stream', 422],
    ['far too much', 'imports/look', Buffer.alloc(17 * 1024 * 1024), 'application/octet-stream', 413],
  ])('%s is refused', async (_, path, body, type, status) => {
    expect((await send(path, body, type)).status).toBe(status)
  })

  test('swapped probes put right afterwards: computed anew from raw, both kept', async () => {
    const [was] = (await getJson<FiringSummary[]>(`${url}api/firings`)).filter(({ title }) => title === 'Made-up firing')
    if (!was) throw new Error('nothing was taken in')
    const right = {
      roles: { 'yard/n1/wall': 'outlet', 'yard/n1/outlet': 'wall' },
      calibration: { 'yard/n1/firebox': { gain: 1, offset: -5 } },
    }
    const answer = await post(`${url}api/firings/${was.id}/again`, right)
    const { id } = (await answer.json()) as { id: string }
    expect(answer.status).toBe(201)
    const lines = async (firing: string) =>
      (await site.store.curve(firing, was.startedAt, was.startedAt + 900_000, 900_000)).map(({ role, value }) => [role, value[30]] as const)
    const [old, anew] = [
      new Map<string, number | null | undefined>(await lines(was.id)),
      new Map<string, number | null | undefined>(await lines(id)),
    ]
    expect(old.get('outlet')).toBeGreaterThan(20)
    expect(anew.get('wall')).toBe(old.get('outlet'))
    expect(anew.get('outlet')).toBe(old.get('wall'))
    expect(anew.get('firebox')).toBe(Number(old.get('firebox')) - 5)
    expect((await getJson<FiringSummary[]>(`${url}api/firings`)).map((one) => one.id)).toEqual(expect.arrayContaining([was.id, id]))
    expect(await site.store.documents('played-again')).toMatchObject([{ id, by: 'owner' }])
  })
})
