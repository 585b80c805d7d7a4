import { resolve } from 'node:path'

/** A program of the build (tests/config/built-first.ts); BUILT_APP names another build, e.g. an older one to show a defect on. */
export function builtProgram(name: string): string {
  return resolve(process.env['BUILT_APP'] ?? '.build/app', 'server', `${name}.js`)
}
