import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { chmodSync, mkdtempSync, readdirSync, readFileSync, readlinkSync, statSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import mqtt from 'mqtt'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Register } from '../../../server/http/register.ts'
import { openDatabase } from '../../../server/storage/sqlite/engine.ts'
import { openBrowser } from '../../support/browser.ts'
import { driveApp, post } from '../../support/driven-app.ts'
import { startProgram } from '../../support/program.ts'
import type { Program } from '../../support/program.ts'
import { yard } from './stranger.ts'
import type { Yard } from './stranger.ts'

// Numbers S19 to S36 are those of the handbook's list of checks (reliability, 6; OWASP ASVS 5.0 and ETSI EN 303 645).

const naughty = JSON.parse(readFileSync('tests/corpora/naughty-strings/blns.json', 'utf8')) as string[]
let live: Yard
let program: Program
const data = mkdtempSync(join(tmpdir(), 'box-'))
beforeAll(async () => {
  live = await yard()
  program = await startProgram(data)
})
afterAll(async () => {
  await live.end()
  program.child.kill('SIGKILL')
})

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))

/** Dialogs, script errors and breaches of the content-security policy, as they come. */
function troubleOf(page: Page): string[] {
  const trouble: string[] = []
  page.on('dialog', (dialog) => {
    trouble.push(`dialog ${dialog.message()}`)
    void dialog.dismiss()
  })
  page.on('pageerror', (error) => trouble.push(error.message))
  page.on('console', (message) => {
    if (/Content Security Policy|Content-Security-Policy/i.test(message.text())) trouble.push(message.text())
  })
  return trouble
}

/** Ports on which a process listens, from its open sockets and the kernel's table (state 0A is LISTEN). */
function listeningPorts(pid: number): number[] {
  const own = new Set(
    readdirSync(`/proc/${pid}/fd`).flatMap((fd) => {
      try {
        return /^socket:\[(\d+)\]$/.exec(readlinkSync(`/proc/${pid}/fd/${fd}`))?.[1] ?? []
      } catch {
        return [] // closed meanwhile
      }
    }),
  )
  const rows = ['tcp', 'tcp6', 'udp', 'udp6'].flatMap((table) =>
    readFileSync(`/proc/${pid}/net/${table}`, 'utf8')
      .split('\n')
      .slice(1)
      .map((row) => ({ table, fields: row.trim().split(/\s+/) })),
  )
  return rows.flatMap(({ table, fields }) => {
    const [, local = '', , state] = fields
    const isOpen = own.has(fields[9] ?? '') && (table.startsWith('udp') || state === '0A')
    return isOpen ? [Number.parseInt(local.split(':')[1] ?? '', 16)] : []
  })
}

describe('what gets out', () => {
  it('S19 no secret stands in a log, an answer, a file or the name of one', async () => {
    const cookie = await live.cookieOf('operator')
    const { code } = (await (await post(`${live.url}/api/people/invite`, { person: 'viewer' })).json()) as { code: string }
    const { secret } = (await (await post(`${live.url}/api/nodes/n9/key`, { way: 'make' })).json()) as { secret: string }
    await live.json('POST', '/api/people/pair', { code: `${code}x` })
    await live.ask('GET', `/pair?code=${code}`)
    await live.ask('GET', '/api/people', { headers: { cookie: `kiln-device=${code}` } })
    const backup = await live.store.backup()
    const secrets = [cookie.split('=')[1] ?? '', code, secret]
    const said = live.logged.join('\n') + JSON.stringify(await (await fetch(`${live.url}/api/people`)).json()) + backup
    const bytes = filesIn(live.folder).map((file) => readFileSync(file, 'latin1'))
    for (const each of secrets) {
      expect(each.length).toBeGreaterThanOrEqual(22)
      expect(said).not.toContain(each)
      expect(bytes.some((text) => text.includes(each))).toBe(false)
    }
  })

  it('S23 two ports and no third; TRACE, hidden folders, lists of folders and source maps get nothing', async () => {
    expect(listeningPorts(program.child.pid ?? 0).sort()).toEqual([Number(new URL(program.url).port), program.mqttPort].sort())
    for (const path of ['/.git/HEAD', '/.env', '/assets/', '/server/main.js', '/settings.json', '/main.js.map', '/kiln.db']) {
      expect((await fetch(program.url + path)).status, path).toBe(404)
    }
    const traced = await new Promise<string>((resolve) => {
      const socket = connect(Number(new URL(program.url).port), '127.0.0.1', () =>
        socket.end('TRACE / HTTP/1.1\r\nHost: localhost\r\nX-Own: echoed\r\nConnection: close\r\n\r\n'),
      )
      let text = ''
      socket.on('data', (chunk: Buffer) => (text += chunk.toString())).on('close', () => resolve(text))
      socket.on('error', () => resolve(text))
    })
    expect(traced).not.toContain('echoed')
    expect(traced).not.toMatch(/^HTTP\/1.1 200/)
  })
})

describe('text that means mischief', () => {
  it('S29 naughty strings are shown as text: no element, no handler, no dialog, no breach of the policy', async () => {
    const sources = readdirSync('web/src', { recursive: true, encoding: 'utf8' }).filter((file) => /\.(svelte|ts)$/.test(file))
    const raw = sources.filter((file) =>
      /\{@html|innerHTML|outerHTML|insertAdjacentHTML|document\.write/.test(readFileSync(join('web/src', file), 'utf8')),
    )
    expect(raw).toEqual([])

    const texts = naughty.filter((text) => /[<>"'`&]|script|alert/i.test(text))
    expect(texts.length).toBeGreaterThan(150)
    for (const [index, text] of texts.entries()) {
      const act = { id: `n${index}`, kiln: 'kiln-1', act: { action: 'note', text } }
      expect((await post(`${live.url}/api/acts`, act)).status, text).toBe(200)
    }
    const browser = await openBrowser()
    try {
      const page = await browser.newPage()
      const trouble = troubleOf(page)
      for (const path of ['/', '/#/setup', '/#/shelf', '/#/lots']) {
        await page.goto(`http://localhost:${live.port}${path}`)
        await page.waitForSelector('main')
        await page.waitForTimeout(500)
      }
      const planted = await page.evaluate(
        `[...document.querySelectorAll('*')].filter((e) => e.tagName === 'SCRIPT' && !e.src || e.tagName === 'IFRAME' || [...e.attributes].some((a) => /^on/i.test(a.name))).length`,
      )
      expect(planted).toBe(0)
      expect(trouble).toEqual([])
    } finally {
      await browser.close()
    }
  })

  it('S29 notes of a firing and names of lots are shown letter by letter, in all naughty strings', async () => {
    // `npm run bad-input` takes all of them, `npm test` every thirteenth
    const some = naughty.filter((_, index) => index % Number(process.env['NAUGHTY_STEP'] ?? 13) === 0)
    await post(`${live.url}/api/acts`, { id: 'light', kiln: 'kiln-1', act: { action: 'light' } })
    live.clock.moveTo(live.clock.now() + 2000)
    const shelved = async () => ((await (await fetch(`${live.url}/api/firings`)).json()) as { id: string }[])[0]?.id ?? ''
    await expect.poll(shelved).not.toBe('')
    const firing = await shelved()
    const lots = new Set<string>()
    for (const [index, text] of some.entries()) {
      expect((await post(`${live.url}/api/documents/note/${firing}`, { text, name: text }, 'PUT')).status).toBe(201)
      const event = { what: 'charcoal', lot: text, firing: null, massG: 1000, finesG: 0 }
      if ((await post(`${live.url}/api/lots/entries`, { id: `s29-${index}`, event })).status === 201) lots.add(text)
    }
    expect(lots.size).toBeGreaterThan(some.length / 2)
    const browser = await openBrowser()
    try {
      const page = await browser.newPage()
      const trouble = troubleOf(page)
      await page.goto(`http://localhost:${live.port}/#/shelf/${firing}`)
      await page.waitForSelector('[data-part=notes] li')
      const notes = await page.evaluate<string[]>(
        `[...document.querySelectorAll('[data-part=notes] li')].map((line) => line.querySelector('p').textContent)`,
      )
      // the first letter of a sentence is made large; the same note again is the same revision
      const flat = (texts: string[]) => new Set(texts.map((text) => text.toLowerCase()))
      expect(flat(notes)).toEqual(flat(some))
      await page.goto(`http://localhost:${live.port}/#/lots`)
      await page.waitForSelector('main a[href^="#/lots/"]')
      const shown = await page.evaluate<string>(`document.querySelector('main').textContent`)
      for (const lot of lots) expect(shown).toContain(lot)
      expect(await page.evaluate(`document.querySelectorAll('main script, main iframe, main img, main object, main embed').length`)).toBe(0)
      expect(trouble).toEqual([])
    } finally {
      await browser.close()
    }
  })

  it(`S30 SQL has bound parameters only, and ${naughty.length} strings through two doors leave the schema as it is`, async () => {
    const schema = () => {
      const database = openDatabase(join(live.folder, 'kiln.db'), 'read')
      const rows = database.prepare('SELECT name, sql FROM sqlite_schema ORDER BY name').all()
      database.close()
      return createHash('sha256').update(JSON.stringify(rows)).digest('hex')
    }
    const before = schema()
    for (const [index, text] of naughty.entries()) {
      expect((await post(`${live.url}/api/documents/note/s30`, { text, [text]: index }, 'PUT')).status).toBe(201)
      await live.client.publishAsync('firing/1/yard/n1/readings', text, { qos: 1 })
    }
    expect(schema()).toBe(before)
    const kept = (await (await fetch(`${live.url}/api/documents/note/s30`)).json()) as { document: { text: string } }[]
    expect(new Set(kept.map(({ document }) => document.text))).toEqual(new Set(naughty))
    // what stands between `${}` in a statement is a name of ours, never a value: names of the tables, the text of a pragma, and which rows `keep` (a constant)
    const files = filesIn('server/storage/sqlite').filter((file) => file.endsWith('.ts'))
    const woven = files.flatMap((file) =>
      [...readFileSync(file, 'utf8').matchAll(/(?:prepare|exec)\(\s*`[^`]*`/g)].flatMap(([sql]) =>
        [...sql.matchAll(/\$\{([^}]*)\}/g)].map((m) => m[1] ?? ''),
      ),
    )
    expect(woven.filter((expression) => !/^(table(\.name)?|index \+ 1|text|keep)$/.test(expression.trim()))).toEqual([])
  })

  it('S33 no line of the log can be forged: line ends and terminal codes of a stranger are escaped', async () => {
    const evil = 'x\r\n{"level":50,"msg":"forged"}\u001b[2J'
    const lines = () => program.out().split('\n')
    await fetch(`${program.url}/api/documents/${encodeURIComponent(evil)}`)
    const client = await mqtt.connectAsync(`mqtt://127.0.0.1:${program.mqttPort}`, { reconnectPeriod: 0 })
    client.on('error', () => {})
    client.publish(`firing/1/yard/server/${evil}`, 'x', { qos: 0 })
    await new Promise<void>((resolve) => client.once('close', () => resolve()))
    await post(`${program.url}/api/nodes/${encodeURIComponent(evil)}/key`, { way: 'make' })
    await expect.poll(() => lines().some((line) => /mqtt (publish|connection) refused/.test(line))).toBe(true)
    expect(lines().filter((line) => /^\s*\{"level":50/.test(line))).toEqual([])
    expect(program.out()).not.toContain('\u001b[2J')
  })
})

describe('the box itself', () => {
  it('S32 who did what, when and from where is registered, chained, and a change is noticed at the next start', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'register-'))
    const first = await driveApp({ at: Date.UTC(2026, 4, 1), folder })
    await post(`${first.url}/api/people/invite`, { person: 'viewer' })
    await post(`${first.url}/api/acts`, { id: 'r1', kiln: 'kiln-1', act: { action: 'acknowledge', alarm: 'fire-out' } })
    await post(`${first.url}/api/documents/lot/r`, { litres: 1 }, 'PUT')
    const read = async (url: string) =>
      (await (await fetch(`${url}/api/register`)).json()) as {
        whole: boolean
        lines: { what: string; who: string; from: string; at: string }[]
      }
    const { lines } = await read(first.url)
    expect(lines.map(({ what }) => what)).toEqual(['putDocument', 'act', 'invite'])
    for (const { who, from, at } of lines) {
      expect([who, from]).toEqual(['owner', '127.0.0.1'])
      expect(at).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}[+-]\d\d:\d\d$/)
    }
    await first.client.endAsync(true)
    await first.app.stop()

    const again = await driveApp({ at: Date.UTC(2026, 4, 1, 1), folder })
    expect(await read(again.url)).toMatchObject({ whole: true, lines })
    const [kept] = await again.store.history('register', '2')
    await again.store.putDocument({ kind: 'register', id: '2', at: 1, by: 'x', json: (kept?.json ?? '').replace('"act"', '"beep"') })
    const third = new Register(again.store, Date.now)
    await third.start()
    expect(third.whole()).toBe(false)
    await again.client.endAsync(true)
    await again.app.stop()
  })

  it('S34 every package is locked by its sum, has a free licence, and none but SQLite runs a program when installed; a bill of materials can be written', () => {
    type Package = { dev?: boolean; integrity?: string; license?: string; hasInstallScript?: boolean }
    const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as { packages: Record<string, Package> }
    const production = Object.entries(packages).filter(([path, { dev }]) => path !== '' && !dev)
    expect(production.length).toBeLessThanOrEqual(90)
    expect(production.filter(([, { hasInstallScript }]) => hasInstallScript).map(([path]) => path)).toEqual([
      'node_modules/@photostructure/sqlite',
    ])
    expect(production.filter(([, { integrity }]) => !integrity?.startsWith('sha512-'))).toEqual([])
    // qrcode-terminal names its licence (Apache-2.0) in a form of its own
    const free = /^(MIT|ISC|BSD-[23]-Clause|0BSD|Apache-2\.0)$/
    expect(production.filter(([, { license }]) => !free.test(license ?? '')).map(([path]) => path)).toEqual([
      'node_modules/qrcode-terminal',
    ])
    const bill = execFileSync('npm', ['sbom', '--omit', 'dev', '--sbom-format', 'cyclonedx', '--package-lock-only'], {
      encoding: 'utf8',
      maxBuffer: 1 << 26,
    })
    expect((JSON.parse(bill) as { components: object[] }).components.length).toBeGreaterThan(50)
  })

  it('S35 the data folder and what is in it belong to one user; one that everybody may write to is refused', async () => {
    const fresh = join(mkdtempSync(join(tmpdir(), 'own-')), 'data')
    const first = await startProgram(fresh)
    await post(`${first.url}/api/documents/note/n`, {}, 'PUT')
    for (const path of [fresh, ...filesIn(fresh)]) expect(statSync(path).mode & 0o077, path).toBe(0)
    first.child.kill('SIGTERM')
    expect(await first.ended).toBe(0)
    chmodSync(fresh, 0o777)
    await expect(startProgram(fresh)).rejects.toThrow(/^5: .*chmod o-w/)
  })

  it('S36 everything of a person can be taken out, and a folder that was removed leaves no credential anywhere else', async () => {
    const cookie = await live.cookieOf('viewer')
    const secret = cookie.split('=')[1] ?? ''
    const { id } = ((await (await fetch(`${live.url}/api/people`)).json()) as { id: string }[]).at(-1) ?? { id: '' }
    expect((await fetch(`${live.url}/api/people/${id}`, { method: 'DELETE' })).status).toBe(204)
    expect((await live.ask('GET', '/api/firings', { headers: { cookie } })).status).toBe(403)
    for (const path of ['/api/firings', '/api/documents/lot', '/api/lots', '/api/settings', '/api/register', '/api/people']) {
      expect((await fetch(live.url + path)).status, path).toBe(200)
    }
    // the only credential in the folder is a sum from which no cookie can be made
    for (const file of filesIn(live.folder)) expect(readFileSync(file, 'latin1'), file).not.toContain(secret)
    // all that the program writes is below its data folder: removing that is the factory reset
    const opened = readdirSync(`/proc/${String(program.child.pid)}/fd`).map((fd) => {
      try {
        return readlinkSync(`/proc/${String(program.child.pid)}/fd/${fd}`)
      } catch {
        return ''
      }
    })
    const written = opened.filter((path) => path.startsWith('/') && !path.startsWith('/dev') && !path.startsWith(data))
    expect(written.filter((path) => !path.includes('/node_modules/'))).toEqual([])
  })
})
