import { spawnSync } from 'node:child_process'
import { existsSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { brotliDecompressSync } from 'node:zlib'
import sparticuz from '@sparticuz/chromium'
import { chromium, type Browser } from 'playwright-core'

/** Flags of our own: the package's are meant for serverless machines and switch off half of what a page needs. */
const flags = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--no-zygote']

/** A real browser that came with npm: nothing is downloaded, nothing of the machine is needed. The caller closes it. */
export async function openBrowser(): Promise<Browser> {
  const executablePath = await sparticuz.executablePath()
  return chromium.launch({
    executablePath,
    args: flags,
    env: { ...process.env, LANG: 'en_US.UTF-8', ...libraries(executablePath) },
    headless: true,
  })
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
