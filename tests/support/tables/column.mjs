// npm run column [-- NAME,...] [--keep]: the CI column of the tables of figures (tests/faults/FAULTS.md, reliability 11), command by command, and the
// checks of the whole that are too long for `npm test`. Each says met or MISSED, with what it said of itself; what this machine lacks is named
// by the tests themselves ("not checked here"). One that falls short is run once more and both are told: a machine with other work makes a
// timer late now and then, a defect comes again. One that does not end in its time, or finds none left of the whole column's, is told and
// misses nothing: slow machines. With --keep the result goes into the table's last column. Those that measure time are run only when they are
// named, on a machine that does nothing else: npm run column -- durable,soak,crowd,shelf,curve,page,latency --keep
import { spawn, spawnSync } from 'node:child_process'
import { readFileSync, writeFileSync } from 'node:fs'
import { stripVTControlCharacters } from 'node:util'
import { explained } from '../explained.mjs'

explained(import.meta.url, ['--keep'])

/** `says`: the lines that are its account. Limits are several times what two quiet cores take. */
const checks = {
  security: { minutes: 6, command: ['security'], says: /security checks$|^(ok|SHORT) / },
  'bad-input': { minutes: 8, command: ['bad-input'], says: /^(ok|SHORT) / },
  outside: { minutes: 3, command: ['outside'], says: /checks against outside figures/ },
  fuzz: { minutes: 3, command: ['fuzz', '--', '--seconds', '60', '--seed', '11'], says: /findings$/ },
  sealed: { minutes: 5, command: ['sealed', '--', '--count', '400'], says: /./ },
  alarms: { minutes: 4, command: ['bench:alarms', '--', '--dead', '20'], says: /own sound/ },
  again: { minutes: 3, command: ['bench:alarms', '--', '--again', '20'], says: /within one beat/ },
  study: { minutes: 4, command: ['study', '--', '--count', '4'], says: /captured|mean|worst/ },
  faults: {
    minutes: 16,
    command: ['faults'],
    says: /SHORT|not here|not checked|numbered faults|clock scenarios|: \d+ (kills|cuts|states)|flipped bits/,
  },
}
/** Named only. */
const timed = {
  durable: { minutes: 10, command: ['bench:durable', '--', '3', '20'], says: /median/ },
  soak: { minutes: 20, command: ['bench:soak'], says: /target/ },
  crowd: { minutes: 10, command: ['bench:crowd'], says: /target/ },
  shelf: { minutes: 20, command: ['bench:shelf'], says: /first|readings|killed/ },
  curve: { minutes: 20, command: ['bench:curve'], says: /first|again/ },
  page: { minutes: 10, command: ['bench:page'], says: /painted/ },
  latency: { minutes: 60, command: ['bench:alarms', '--', '--latency', '1000'], says: /missed/ },
}

/** Into the last column of the table of figures: `which` are the rows whose command begins with this one. */
function keep(command, result) {
  const file = 'tests/faults/FAULTS.md'
  const lines = readFileSync(file, 'utf8').split('\n')
  const figures = lines.findIndex((line) => /^\| figure /.test(line))
  const kept = lines.map((line, index) => {
    const cells = line.split('|')
    if (index <= figures + 1 || cells.length !== 6 || !cells[3].includes(`npm run ${command}`)) return line
    return [...cells.slice(0, 4), ` ${result} `, ''].join('|')
  })
  writeFileSync(file, kept.join('\n'))
  spawnSync('npx', ['prettier', '--config', 'tests/config/prettier.json', '--write', file])
}

function run(words, minutes) {
  return new Promise((resolve) => {
    const child = spawn('npm', ['run', '--silent', ...words], { stdio: ['ignore', 'pipe', 'pipe'], detached: true })
    const chunks = []
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (chunk) => chunks.push(chunk))
    let late = false
    const timer = setTimeout(() => {
      late = true
      process.kill(-child.pid, 'SIGKILL')
    }, minutes * 60_000)
    child.once('error', (error) => chunks.push(Buffer.from(error.message)))
    child.once('close', (status) => {
      clearTimeout(timer)
      resolve({ met: status === 0, late, text: stripVTControlCharacters(Buffer.concat(chunks).toString()) })
    })
  })
}

const wholeMinutes = 25
const [names] = process.argv.slice(2).filter((word) => word !== '--keep')
// named ones take their time
const mustEndAt = names === undefined ? performance.now() + wholeMinutes * 60_000 : Infinity
const asked = names?.split(',') ?? Object.keys(checks)
const unknown = asked.find((name) => !(name in checks || name in timed))
if (unknown !== undefined) {
  console.error(`'${unknown}' is no check of the column: ${Object.keys({ ...checks, ...timed }).join(', ')}`)
  process.exit(2)
}
let missed = 0
for (const [name, { minutes, command, says }] of Object.entries({ ...checks, ...timed })) {
  if (!asked.includes(name)) continue
  for (let attempt = 1; attempt <= 2; attempt++) {
    const began = performance.now()
    const left = (mustEndAt - began) / 60_000
    if (left < 1) {
      console.log(`${name}: not begun, the ${wholeMinutes} min of the column are over (npm run ${command.join(' ')})`)
      missed += attempt - 1
      break
    }
    const { met, late, text } = await run(command, Math.min(minutes, left))
    const word = late ? 'not ended in its time, and stopped' : met ? 'met' : 'MISSED'
    console.log(`${name}: ${word} after ${((performance.now() - began) / 1000).toFixed(0)} s (npm run ${command.join(' ')})`)
    for (const line of met || late ? text.split('\n').filter((line) => says.test(line)) : [text]) console.log(`  ${line}`)
    if (process.argv.includes('--keep')) keep(command.slice(0, 3).join(' '), met ? 'met' : word)
    if (met || late) break
    if (attempt === 2) missed++
  }
}
console.log(missed === 0 ? 'the column is met' : `${missed} of the column missed, twice each`)
process.exitCode = missed === 0 ? 0 : 1
