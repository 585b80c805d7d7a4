import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { brotliDecompressSync } from 'node:zlib'
import sparticuz from '@sparticuz/chromium'
import { chromium, type Browser, type LaunchOptions } from 'playwright-core'

/** Flags of our own: the package's are meant for serverless machines and switch off half of what a page needs. */
const flags = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--no-zygote']

/** A real browser that came with npm: nothing is downloaded, nothing of the machine is needed. */
async function howToStart(): Promise<LaunchOptions> {
  const executablePath = await sparticuz.executablePath()
  return { executablePath, args: flags, env: { ...process.env, LANG: 'en_US.UTF-8', ...libraries(executablePath) }, headless: true }
}

/** The browser that `serveBrowser` keeps, when there is one; closing it then ends only what this file had of it. The caller closes it. */
export async function openBrowser(): Promise<Browser> {
  const kept = process.env['BROWSER_AT']
  return kept === undefined ? chromium.launch(await howToStart()) : chromium.connect(kept)
}

/** A browser that other processes reach by its address, each with windows of its own. */
export async function serveBrowser(): Promise<{ address: string; stop: () => Promise<void> }> {
  const server = await chromium.launchServer({ ...(await howToStart()), host: '127.0.0.1' })
  return { address: server.wsEndpoint(), stop: () => server.close() }
}

/** Where the machine has no NSS, the browser's package brings its own libraries. */
function libraries(executablePath: string): Record<string, string> {
  if (spawnSync(executablePath, ['--version']).status === 0) return {}
  const folder = join(tmpdir(), 'kiln-browser-libraries')
  if (!existsSync(folder)) {
    const packed = join(dirname(createRequire(import.meta.url).resolve('@sparticuz/chromium')), '..', '..', 'bin', 'al2023.tar.br')
    const making = mkdtempSync(`${folder}-`)
    const tar = join(making, 'libraries.tar')
    writeFileSync(tar, brotliDecompressSync(readFileSync(packed)))
    mkdirSync(join(making, 'out'))
    const unpacked = spawnSync('tar', ['-xf', tar, '-C', join(making, 'out')])
    if (unpacked.status !== 0) throw new Error(`The browser's libraries could not be unpacked: ${String(unpacked.stderr)}`)
    if (!existsSync(folder)) renameSync(join(making, 'out'), folder)
    rmSync(making, { recursive: true, force: true })
  }
  return { LD_LIBRARY_PATH: [join(folder, 'lib'), process.env.LD_LIBRARY_PATH ?? ''].filter(Boolean).join(':') }
}
