// Starts one of the built programs: `node server/launch.mjs main --port 8080`.
// Node 20 reads no TypeScript, so the first start (and every start after a change) builds, which takes a few seconds.
import { execFileSync } from 'node:child_process'
import { mkdtempSync, existsSync, readFileSync, readdirSync, renameSync, rmSync, statSync, writeFileSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'

const root = fileURLToPath(new URL('..', import.meta.url))
const out = join(root, '.build', 'app')
const stamp = join(out, 'stamp')
const entriesFile = join(root, 'server', 'entries.json')

/** Names, sizes and times of every source: any change, also of the lock file, makes another text. */
function fingerprint() {
  const lines = []
  const walk = (folder, only = '') => {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      const path = join(folder, entry.name)
      if (entry.isDirectory()) walk(path, only)
      else if (path.endsWith(only)) {
        const { size, mtimeMs } = statSync(path)
        lines.push(`${path.slice(root.length)} ${size} ${mtimeMs}`)
      }
    }
  }
  walk(join(root, 'server'))
  walk(join(root, 'web'))
  // some programs live there, and write their tables and plots beside themselves
  walk(join(root, 'tests', 'bench'), '.ts')
  const { size, mtimeMs } = statSync(join(root, 'package-lock.json'))
  lines.push(`lock ${size} ${mtimeMs}`)
  return lines.sort().join('\n')
}

async function build() {
  const { build: bundle } = await import('vite')
  mkdirSync(join(root, '.build'), { recursive: true })
  const fresh = mkdtempSync(join(root, '.build', 'making-'))
  const entries = JSON.parse(readFileSync(entriesFile, 'utf8'))
  const print = fingerprint()
  await bundle({
    root,
    configFile: false,
    logLevel: 'warn',
    build: {
      ssr: true,
      outDir: join(fresh, 'server'),
      target: 'node20',
      minify: false,
      sourcemap: true,
      rollupOptions: { input: Object.fromEntries(Object.entries(entries).map(([name, file]) => [name, join(root, file)])) },
    },
  })
  await bundle({
    root: join(root, 'web'),
    configFile: join(root, 'web', 'vite.config.ts'),
    logLevel: 'warn',
    build: { outDir: join(fresh, 'web'), emptyOutDir: true, rollupOptions: { checks: { pluginTimings: false } } },
  })
  writeFileSync(join(fresh, 'stamp'), print)
  // renamed into place whole, so that a program started meanwhile never finds half a build
  const old = `${fresh}-old`
  for (let tries = 0; ; tries++) {
    try {
      if (existsSync(out)) renameSync(out, old)
      renameSync(fresh, out)
      break
    } catch (error) {
      // another start built at the same moment and was quicker
      if (tries === 5) throw error
    }
  }
  rmSync(old, { recursive: true, force: true })
}

function isBuilt() {
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === fingerprint()
}

/** In a process of its own: what the bundler takes of memory must not stay with the service, and a test's environment gives a page for developers. */
export function ensureBuilt() {
  if (isBuilt()) return
  const env = { ...process.env, NODE_ENV: 'production' }
  execFileSync(process.execPath, [fileURLToPath(import.meta.url), '--build'], { stdio: ['ignore', 2, 2], env })
}

if (process.argv[1] && fileURLToPath(import.meta.url) === process.argv[1]) {
  const name = process.argv.splice(2, 1)[0]
  if (name === '--build') {
    if (!isBuilt()) await build()
  } else {
    ensureBuilt()
    await import(pathToFileURL(join(out, 'server', `${name}.js`)).href)
  }
}
