import { nowS, two, wall, type Case } from './case.ts'

export const values = (): Case[] => {
  const fields: Record<string, string> = { v: '1', vs: '"fault:open"', vb: 'true', vd: '"aGk"' }
  const labels = Object.keys(fields)
  const pairs = labels.flatMap((one, index) => labels.slice(index + 1).map((other) => [one, other]))
  return [
    ...[...pairs, labels].map((given) => ({
      rule: 'class 16 [RFC 8428, 4.2]',
      what: `${given.join(' and ')} in one record`,
      payload: two(`"n":"x",${given.map((label) => `"${label}":${fields[label] ?? ''}`).join(',')}`),
      outcome: `${wall} !two-values#0`,
    })),
    { rule: 'class 16 [RFC 8428, 4.2]', what: 'no value and no sum', payload: two('"n":"x"'), outcome: `${wall} !no-value#0` },
    { rule: 'class 16 [W: numbers only]', what: 'a sum alone', payload: two('"n":"x","s":5'), outcome: `${wall} !no-number#0` },
    ...['open', 'short-gnd', 'short-vcc', 'range', 'bus', 'crc', 'not-converted', 'saturated'].map((word) => ({
      rule: 'class 12 [W 8]',
      what: `fault:${word}`,
      payload: two(`"n":"x","vs":"fault:${word}"`),
      outcome: `x=fault:${word} ${wall}`,
    })),
    ...['fault:', 'fault:melted', 'fault:OPEN', 'fault:open ', 'fault: open', 'fault:open,bus', 'fault:constructor'].map((text) => ({
      rule: 'class 12 [W 8]',
      what: `${JSON.stringify(text)}, which is no fault that is known`,
      payload: two(`"n":"x","vs":"${text}"`),
      outcome: `${wall} !unknown-fault#0`,
    })),
    ...['', '31.2', 'hot', 'Fault:open', 'open', 'NaN', ' fault:open', '=1+1', '<b>31</b>'].map((text) => ({
      rule: 'class 10 [W 8]',
      what: `the text ${JSON.stringify(text)} in place of a number`,
      payload: two(`"n":"x","vs":"${text}"`),
      outcome: `${wall} !no-number#0`,
    })),
    ...(
      [
        ['outlet', '125', 'outlet=125', 'the end of a ds18b20'],
        ['outlet', '126', 'outlet=126?', 'a little more than a ds18b20 shows'],
        ['outlet', '-127', 'outlet=fault:bus', 'what a ds18b20 says when its line is broken'],
        ['outlet', '85', 'outlet=fault:not-converted', 'what a ds18b20 says before its first conversion'],
        ['outlet', '200', 'outlet=125?', 'far more than a ds18b20 shows, held to its range'],
        ['probe', '1372', 'probe=1372', 'the end of type K (IEC 60584-1)'],
        ['probe', '1400', 'probe=1400?', 'a little beyond type K'],
        ['probe', '2000', 'probe=1372?', 'far beyond type K, held to its range'],
        ['probe', '-49', 'probe=-49', 'a cold morning'],
      ] as const
    ).map(([channel, value, sample, what]) => ({
      rule: 'class 12 [W 9; instrument facts 2 and 4]',
      what: `${value} of ${channel}: ${what}`,
      payload: two(`"n":"${channel}","v":${value}`),
      outcome: `${sample} ${wall}`,
    })),
  ]
}

const noUnits = [
  ...['degF', 'degC', '\u00b0C', '\u2103', 'celsius', 'Celsius', 'cel', 'CEL', 'Kelvin', 'k', '', ' Cel', 'Cel ', 'K\0'],
  ...['constructor', '__proto__', 'null', 'hot'],
]

export const units = (): Case[] => {
  const of = (unit: string, value: string, version = ''): string => two(`${version}"n":"x","u":${JSON.stringify(unit)},"v":${value}`)
  const secondary = {
    ms: ['5000', '5'],
    mV: ['5000', '5'],
    kW: ['5', '5000'],
    hPa: ['5', '500'],
    cm: ['500', '5'],
    mm: ['5000', '5'],
    ppm: ['50', '50'],
  }
  return [
    ...['Cel', 'V', 'Ohm', 'kg', '%', '%RH', 'Pa', 's', 'count', 'lx', 'W', 'A', 'C', 'F'].map((unit) => ({
      rule: 'class 11 [RFC 8428, 12.1]',
      what: `5 ${unit}`,
      payload: of(unit, '5'),
      outcome: `x=5 ${wall}`,
    })),
    {
      rule: 'class 11 [SI: 273.15 K is 0 °C]',
      what: '300.15 K, not announced otherwise',
      payload: of('K', '300.15'),
      outcome: `x=27 ${wall}`,
    },
    { rule: 'class 11 [RFC 8428, 12.1]', what: 'a ratio, told in ppm', payload: of('/', '0.00005'), outcome: `x=50 ${wall}` },
    ...['ppm', 'mV', 'ms', 'kW', 'hPa', 'cm', 'mm', 'kWh', 'dBm'].map((unit) => ({
      rule: 'class 11 [RFC 8798, 3: only with its feature]',
      what: `${unit} in a pack of version 10`,
      payload: of(unit, '5'),
      outcome: `${wall} !unit-version#0`,
    })),
    ...Object.entries(secondary).map(([unit, [value = '', primary = '']]) => ({
      rule: 'class 11 [RFC 8798, 3]',
      what: `${value} ${unit} in a pack of version 26`,
      payload: of(unit, value, '"bver":26,'),
      outcome: `x=${primary} ${wall}`,
    })),
    ...noUnits.map((unit) => ({
      rule: 'class 11 [RFC 8428, 12.1]',
      what: `the unit ${JSON.stringify(unit)}, which no registry has`,
      payload: of(unit, '5'),
      outcome: `${wall} !unknown-unit#0`,
    })),
    ...['K', 'V', 'F', 'C', '%', 'count', 's'].map((unit) => ({
      rule: 'class 11 [R: only as the channel is declared]',
      what: `${unit} for a channel that was announced in Cel`,
      payload: two(`"n":"outlet","u":"${unit}","v":31`),
      outcome: `${wall} !wrong-unit#0`,
    })),
    { rule: 'class 11 [W: birth document]', what: 'no unit, one announced', payload: '[{"n":"outlet","v":31}]', outcome: 'outlet=31' },
    { rule: 'class 11 [RFC 8428, 4.3]', what: 'no unit, none announced', payload: '[{"n":"x","v":31}]', outcome: '!no-unit#0' },
  ]
}

export const times = (): Case[] => {
  const at = (time: string, base = ''): string => two(`${base}"n":"x","v":1,"t":${time}`)
  const fine = (what: string, time: string | number, when: string) => ({
    rule: 'class 15 [RFC 8428, 4.5.3; W 2 and 3]',
    what,
    payload: at(String(time)),
    outcome: `x=1${when} ${wall}`,
  })
  const bad = (what: string, time: string | number) => ({
    rule: 'class 15 [RFC 8428, 4.5.3; W 9: 2020 to 2100]',
    what,
    payload: at(String(time)),
    outcome: `${wall} !bad-time#0`,
  })
  const sum = (what: string, payload: string, outcome: string) => ({
    rule: 'class 15 [RFC 8428, 4.5.3: base and own time are added; W 9]',
    what,
    payload,
    outcome,
  })
  return [
    fine('zero', 0, ''),
    fine('minus zero', '-0', ''),
    fine('five seconds ago', -5, '@-5s'),
    fine('a part of a second ago', -0.25, '@-0.25s'),
    fine('a day ago', -86_400, '@-86400s'),
    fine('31 days ago', -2_678_400, '@-2678400s'),
    bad('31 days and a second ago', -2_678_401),
    bad('a day and a second ahead', 86_401),
    bad('the last relative second', 2 ** 28 - 1),
    bad('the first absolute second, in 1978', 2 ** 28),
    bad('1e300', '1e300'),
    bad('the last second of 2019', Date.UTC(2020, 0, 1) / 1000 - 1),
    bad('the first second of 2100', Date.UTC(2100, 0, 1) / 1000),
    bad('milliseconds in place of seconds', nowS * 1000),
    fine('this very second', nowS, ''),
    fine('three seconds ago by a clock', nowS - 3, '@-3s'),
    fine('ten seconds ahead by a clock, which then is not believed', nowS + 10, ''),
    fine('an hour ago by a clock, which then is not believed', nowS - 3600, ''),
    fine('the first second of 2020, not believed', Date.UTC(2020, 0, 1) / 1000, ''),
    fine('the last second of 2099, not believed', Date.UTC(2100, 0, 1) / 1000 - 1, ''),
    sum('base time and time', at('4', '"bt":-10,'), 'x=1@-6s wall=20@-10s'),
    sum('an absolute base time and a relative one', at('-2', `"bt":${nowS},`), `x=1@-2s ${wall}`),
    sum('a base time that is no time', at('0', '"bt":1e300,'), '!bad-time#0 !bad-time#1'),
    sum('two numbers whose sum is none', at('-1e308', '"bt":-1e308,'), '!bad-time#0 !bad-time#1'),
  ]
}

export const identities = (): Case[] => {
  const pack = (fields: string): string => `[{"bn":"yard/n1/","n":"wall","u":"Cel","v":20},${fields}]`
  const fine = (what: string, fields: string) => ({ rule: 'class 9 [W 1]', what, payload: pack(fields), outcome: wall })
  const bad = (what: string, fields: string) => ({
    rule: 'class 9 [W 1: 32 bit, seconds since start]',
    what,
    payload: pack(fields),
    outcome: '!bad-identity',
  })
  const count = (label: string, value: string) => `{"n":"${label}","u":"count","v":${value}}`
  return [
    ...['0', '17', '4294967295'].flatMap((value) => [
      fine(`boot ${value}`, `${count('boot', value)},${count('seq', '1')},{"n":"up","u":"s","v":5}`),
      fine(`seq ${value}`, `${count('boot', '1')},${count('seq', value)},{"n":"up","u":"s","v":5}`),
    ]),
    ...['-1', '1.5', '4294967296', '1e300'].flatMap((value) => [
      bad(`boot ${value}`, count('boot', value)),
      bad(`seq ${value}`, `${count('boot', '1')},${count('seq', value)}`),
    ]),
    bad('boot as text', '{"n":"boot","vs":"17"}'),
    bad('seq as text', '{"n":"seq","vs":"fault:open"}'),
    bad('up as text', '{"n":"up","vs":"5"}'),
    bad('up -1', '{"n":"up","u":"s","v":-1}'),
    bad('up of 21 years', '{"n":"up","u":"s","v":662256000}'),
  ]
}
