import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { settingsSchema } from '../../../server/settings/schema.ts'

// What this service does not have, so that what a standard asks of such things does not apply (ASVS.md): read off its sources and its packages.

const sourcesIn = (folder: string): { file: string; text: string }[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.(ts|mjs|svelte)$/.test(file))
    .map((file) => ({ file: join(folder, file), text: readFileSync(join(folder, file), 'utf8') }))
const server = sourcesIn('server')
const page = sourcesIn('web/src')
const found = (sources: typeof server, what: RegExp): string[] =>
  sources.flatMap(({ file, text }) => [...text.matchAll(what)].map(([words]) => `${file}: ${words.trim()}`))
const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as { packages: Record<string, { dev?: boolean }> }
const production = Object.entries(packages).flatMap(([path, { dev }]) =>
  path === '' || dev ? [] : [path.replace(/^.*node_modules\//, '')],
)

it('nobody types a password: no field for one, no route that takes one, no hint and no secret question', () => {
  expect(found(page, /type=["'{]+password|secret question|password hint/gi)).toEqual([])
  expect(found(sourcesIn('server/contract'), /password/gi)).toEqual([])
  expect(found(sourcesIn('server/http'), /password/gi)).toEqual([])
})

it('no package in production reads XML, signs tokens, speaks OAuth, LDAP, GraphQL, WebRTC or mail, or fills templates', () => {
  expect(production.length).toBeGreaterThan(20)
  const kinds =
    /xml|saml|jsonwebtoken|^jose$|jws|oauth|openid|passport|ldap|mail|smtp|memcache|graphql|latex|handlebars|ejs|pug|mustache|nunjucks|webrtc|wrtc|^node-serialize$|^serialize-javascript$/i
  expect(production.filter((name) => kinds.test(name))).toEqual([])
  expect(found([...server, ...page], /DOMParser|parseFromString|RTCPeerConnection|XSLTProcessor/g)).toEqual([])
})

it('of cryptography there is SHA-256, the random numbers of the system, a comparison in constant time and the TLS of Node', () => {
  const imports = found(server, /import \{[^}]*\} from 'node:crypto'/g).flatMap((line) => /\{([^}]*)\}/.exec(line)?.[1]?.split(',') ?? [])
  expect(new Set(imports.map((name) => name.trim()))).toEqual(new Set(['createHash', 'randomBytes', 'randomUUID', 'timingSafeEqual']))
  expect(new Set(found(server, /createHash\('[^']*'\)/g).map((line) => /'([^']*)'/.exec(line)?.[1]))).toEqual(new Set(['sha256']))
  // chance that can be guessed decides when to try again, and numbers of simulated boots, nothing else
  expect(
    found(server, /Math\.random/g)
      .map((line) => line.split(':')[0] ?? '')
      .toSorted(),
  ).toEqual(['server/mqtt/outside.ts', 'server/simulator/buzzer/buzzer-main.ts', 'server/simulator/simulate-main.ts'])
})

it('no text becomes code, no user’s text a pattern, and no other program is started but the build of our own and what its owner named at the start', () => {
  expect(found([...server, ...page], /\beval\(|new Function\b|node:vm|setTimeout\('/g)).toEqual([])
  // the programs of entries.json
  expect(found([...server, ...page], /(?<!typeof )\bimport\([^'"./)]/g)).toEqual(['server/launch.mjs: import(p'])
  expect(found(server, /new RegExp\(/g)).toEqual([])
  // of a role, which is one of a closed list
  expect(found(page, /new RegExp\(`[^-]*/g)).toEqual(['web/src/lib/words/sentence.ts: new RegExp(`^${role}'])
  const starting = found(server, /node:child_process/g).map((line) => line.split(':')[0])
  expect(starting).toEqual(['server/launch.mjs', 'server/runtime/host-sound.ts'])
  // the owner's own, named by a flag or the environment and never over the network, so no setting: no shell, no word but two of closed lists
  const ran = found(server, /\bspawn\([^)]*\)|\bshell:|\bexec(?:Sync|File)?\(/g).filter((line) => line.startsWith('server/runtime/'))
  expect(ran).toEqual(["server/runtime/host-sound.ts: spawn(this.program, words, { stdio: 'ignore', timeout: longestMs })"])
  expect(found(server, /\bplay\(\[[^)]*\)/g)).toEqual(['server/runtime/host-sound.ts: play([priority, alarm])'])
  expect(Object.keys(settingsSchema.shape).filter((name) => /sound|program|command/i.test(name))).toEqual([])
})

it('the service asks nobody else: no request goes out, but to the broker that its owner named', () => {
  expect(found(server, /(?<![\w.])fetch\(|https?\.(?:get|request)\(|from 'node:dns'|from 'undici'/g)).toEqual([])
  const connecting = found(server, /from 'mqtt'/g).map((line) => line.split(':')[0] ?? '')
  expect(connecting.filter((file) => !file.startsWith('server/simulator/'))).toEqual(['server/mqtt/outside.ts'])
})

it('links and redirects lead to addresses of our own', () => {
  const own = /^href=\{(hrefOf\(|recording\}|beside\(|seasonOf\(|new URL\('\.\.\/', place\.base\))/
  const links = page.flatMap(({ text }) => [...text.matchAll(/href=\{[^\n]{0,60}/g)].map(([words]) => words))
  expect(links.length).toBeGreaterThan(20)
  expect(links.filter((words) => !own.test(words))).toEqual([])
  expect(found([...server, ...page], /javascript:|vbscript:|window\.open\(/gi)).toEqual([])
  expect(found(server, /redirect\([^)]*\)|location: '[^']*'/g).map((line) => line.replace(/^[^:]*: /, ''))).toEqual([
    "redirect('/demo/', 308)",
    "location: '/'",
  ])
})

it('a browser keeps choices and what was not sent yet: no cookie is read by script, and no window of others is listened to', () => {
  expect(new Set(found(page, /localStorage\.|sessionStorage|indexedDB/g).map((line) => line.split(':')[0]))).toEqual(
    new Set(['web/src/lib/browser-drawer.ts']),
  )
  expect(found(page, /document\.cookie|addEventListener\('message'|\.postMessage\(/g)).toEqual([])
})
