import { spawnSync } from 'node:child_process'
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { newestBackup } from '../../server/storage/sqlite/backup.ts'
import { placesIn } from '../../server/storage/sqlite/places.ts'
import { dataFolder } from '../contract/data-folder.ts'
import { bundleRig, mayTrace } from './rig/programs.ts'
import { chances, Disk, stepsOf, tracedCalls } from './rig/trace.ts'

const { folder, remove } = dataFolder()
let rig = ''
beforeAll(async () => {
  rig = await bundleRig('files')
})
afterAll(async () => {
  rmSync(dirname(rig), { recursive: true })
  await remove()
})

it.skipIf(!mayTrace())(
  'after a power cut between any two system calls the settings are old or new and the newest backup is whole; what was said to be done is done (F4; Debian package strace)',
  async () => {
    const data = join(folder, 'data')
    mkdirSync(data)
    const trace = join(folder, 'trace')
    const given = ['-f', '-y', '-xx', '-s', '100000', '-e', `trace=${tracedCalls}`, '-o', trace, process.execPath, rig, data, '4']
    spawnSync('strace', given)
    const steps = stepsOf(readFileSync(trace, 'latin1'), data)
    expect(steps.filter((step) => step.do === 'acknowledged')).toHaveLength(4)
    expect(steps.filter((step) => step.do === 'rename' && /settings|backups/.test(step.file))).toHaveLength(12)

    const cut = join(folder, 'cut')
    const places = placesIn(cut)
    const next = chances(20261127)
    const disk = new Disk()
    const wrong: string[] = []
    let acknowledged = 0
    let states = 0
    const judge = (files: Map<string, Buffer>, where: string) => {
      states++
      rmSync(cut, { recursive: true, force: true })
      mkdirSync(places.backups, { recursive: true })
      for (const [name, bytes] of files) if (!name.startsWith('kiln.db')) writeFileSync(join(cut, name), bytes)
      const settings = files.get('settings.json')
      const round = settings === undefined ? 0 : roundOf(settings)
      if (round === null) wrong.push(`${where}: half a settings file`)
      else if (round < acknowledged) wrong.push(`${where}: settings of round ${round}, ${acknowledged} was acknowledged`)
      const backup = newestBackup(places)
      const hour = backup === null ? 0 : Number(/T(\d\d)-/.exec(backup)?.[1])
      if (hour < acknowledged) wrong.push(`${where}: backup of round ${hour}, ${acknowledged} was acknowledged`)
    }
    for (const [index, step] of steps.entries()) {
      disk.take(step)
      if (step.do === 'acknowledged') acknowledged = step.seq
      // most calls are pages of the database and of copies that have no name yet
      if (step.do === 'write' && index % 5 !== 0) continue
      for (const { how, files } of disk.cuts(next)) judge(files, `after call ${index}, ${how}`)
      await new Promise((resolve) => setImmediate(resolve))
    }
    console.info(`own files: ${states} states of ${steps.length} system calls, ${wrong.length} lost or half`)
    expect(wrong).toEqual([])
  },
)

function roundOf(bytes: Buffer): number | null {
  try {
    return (JSON.parse(bytes.toString()) as { round: number }).round
  } catch {
    return null
  }
}
