import { createHash } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { extname, join, relative, sep } from 'node:path'
import { gzipSync } from 'node:zlib'

interface PageFile {
  type: string
  bytes: Uint8Array<ArrayBuffer>
  gzip: Uint8Array<ArrayBuffer> | null
  etag: string
  /** Its name carries a hash of what is in it. */
  hashed: boolean
}

const types: Record<string, string> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.txt': 'text/plain; charset=utf-8',
  '.woff2': 'font/woff2',
  '.woff': 'font/woff',
  '.png': 'image/png',
  '.jpg': 'image/jpeg',
  '.ico': 'image/x-icon',
}
const yearS = 31_536_000

/** The built page, held in memory: only what was there at the start is ever served, so no address can lead out of the folder. */
export class Page {
  private readonly files = new Map<string, PageFile>()

  constructor(folder: string) {
    if (!existsSync(folder)) return
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
      if (!entry.isFile()) continue
      const path = join(entry.parentPath, entry.name)
      const type = types[extname(entry.name)]
      if (type === undefined) continue // source maps and what else is not for browsers
      const bytes = new Uint8Array(readFileSync(path))
      const name = relative(folder, path).split(sep).join('/')
      this.files.set(name, {
        type,
        bytes,
        gzip: type.includes('charset') && bytes.length > 1000 ? new Uint8Array(gzipSync(bytes)) : null,
        etag: `"${createHash('sha256').update(bytes).digest('base64url').slice(0, 22)}"`,
        hashed: /-[A-Za-z0-9_-]{8,}\.\w+$/.test(name) && name.startsWith('assets/'),
      })
    }
  }

  /** @param path below `/` or `/demo/`; empty for the page itself */
  answer(path: string, asked: { etag: string | undefined; gzip: boolean }): Response | null {
    const file = this.files.get(path === '' ? 'index.html' : path)
    if (!file) return null
    const headers: Record<string, string> = {
      'content-type': file.type,
      etag: file.etag,
      'cache-control': file.hashed ? `public, max-age=${yearS}, immutable` : 'no-cache',
      vary: 'accept-encoding',
    }
    if (asked.etag === file.etag) return new Response(null, { status: 304, headers })
    if (asked.gzip && file.gzip) return new Response(file.gzip, { headers: { ...headers, 'content-encoding': 'gzip' } })
    return new Response(file.bytes, { headers })
  }
}
