import { two, wall, x, type Case } from './case.ts'

const utf8 = new TextEncoder()

export const numbers = (): Case[] => [
  ...Object.entries({
    '0': '0',
    '-0': '0',
    '-0.0': '0',
    '1': '1',
    '-1': '-1',
    '1.5': '1.5',
    '0.1': '0.1',
    '1e2': '100',
    '1E2': '100',
    '1e+2': '100',
    '12e-1': '1.2',
    '0e5': '0',
    '1.0': '1',
    '99.999999999999999999999999': '100',
    '1e-400': '0',
    '0.1e3': '100',
  }).map(([text, value]) => ({
    rule: 'class 9 [RFC 8259, 6]',
    what: `the number ${text}`,
    payload: x(text),
    outcome: `x=${value} ${wall}`,
  })),
  ...[
    '01',
    '-01',
    '+1',
    '.5',
    '-.5',
    '1.',
    '1.e2',
    '0x10',
    '1e',
    '1e+',
    '--1',
    '1..2',
    'NaN',
    '-NaN',
    'Infinity',
    '-Infinity',
    'nan',
    'inf',
  ].map((text) => ({ rule: 'class 9 [RFC 8259, 6]', what: `${text} in place of a number`, payload: x(text), outcome: '!bad-json' })),
  ...['1_000', '1,5', '1 000', '\u0661', '\uff11', "'1'", 'True', 'undefined', 'null_', '', '1f', '1n', '0b1', '0o7'].map((text) => ({
    rule: 'class 5 [RFC 8259, 3]',
    what: `${text === '' ? 'nothing' : text} in place of a value`,
    payload: x(text),
    outcome: '!bad-json',
  })),
  ...['1e309', '-1e309', '1e999', '9'.repeat(400), `-${'9'.repeat(400)}`].map((text) => ({
    rule: 'class 9 [R: no infinity]',
    what: `a number of ${text.length} letters that no double holds, ${text.slice(0, 6)}`,
    payload: x(text),
    outcome: `${wall} !bad-number#0`,
  })),
  ...['1e308', '99999', '2048.01', '-400', '-50.01', '-2048.5'].map((text) => ({
    rule: 'class 12 [W 9; registers end at 2048 °C, air above -50 °C]',
    what: `${text} °C, which no probe shows`,
    payload: x(text),
    outcome: `x=fault:range ${wall} !out-of-range#0`,
  })),
]

export const texts = (): Case[] => {
  const broken: Record<string, number[]> = {
    'an overlong slash': [0xc0, 0xaf],
    'an overlong NUL': [0xc0, 0x80],
    'an overlong letter of two bytes': [0xc1, 0xbf],
    'an overlong letter of three bytes': [0xe0, 0x80, 0xaf],
    'an overlong letter of four bytes': [0xf0, 0x80, 0x80, 0xaf],
    'the first surrogate': [0xed, 0xa0, 0x80],
    'the last surrogate': [0xed, 0xbf, 0xbf],
    'a pair of surrogates': [0xed, 0xa0, 0xbd, 0xed, 0xb4, 0xa5],
    'beyond U+10FFFF': [0xf4, 0x90, 0x80, 0x80],
    'a lead of five bytes': [0xf8, 0x88, 0x80, 0x80, 0x80],
    'a lead of six bytes': [0xfc, 0x84, 0x80, 0x80, 0x80, 0x80],
    FE: [0xfe],
    FF: [0xff],
    'a continuation alone': [0x80],
    'the last continuation alone': [0xbf],
    'two bytes, the second missing': [0xc3],
    'three bytes, the last missing': [0xe2, 0x82],
    'four bytes, the last missing': [0xf0, 0x9f, 0x94],
    'Latin-1': [0x77, 0xe4, 0x6e, 0x64],
  }
  return [
    ...Object.entries(broken).map(([what, bytes]) => ({
      rule: 'class 6 [RFC 3629, 3]',
      what,
      payload: Uint8Array.from([...utf8.encode('{"n":"'), ...bytes, ...utf8.encode('","v":1}')]),
      outcome: '!bad-utf8',
    })),
    { rule: 'class 6 [RFC 8259, 8.1]', what: 'UTF-16', payload: Uint8Array.of(0xff, 0xfe, 0x5b, 0, 0x5d, 0), outcome: '!bad-utf8' },
    { rule: 'class 5 [RFC 8259, 8.1]', what: 'UTF-16 without a mark', payload: Uint8Array.of(0x5b, 0, 0x5d, 0), outcome: '!bad-json' },
    { rule: 'class 5 [RFC 8259, 8.1]', what: 'a byte order mark', payload: `\ufeff${x('1')}`, outcome: '!bad-json' },
  ]
}

const noJson = (): Record<string, string> => ({
  'nothing at all': '',
  blanks: ' \t\r\n',
  'a NUL': '\0',
  'a NUL after the pack': `${x('1')}\0`,
  'a second pack after the first': `${x('1')}${x('2')}`,
  'a letter after the pack': `${x('1')}x`,
  'a bracket too many': `${x('1')}]`,
  'a bracket too few': x('1').slice(0, -1),
  'cut in the middle': x('1').slice(0, 30),
  'a comma after the last record': '[{"n":"x","v":1},]',
  'a comma after the last label': '[{"n":"x","v":1,}]',
  'a comma before the first record': '[,{"n":"x","v":1}]',
  'two commas': '[{"n":"x",,"v":1}]',
  'a comment': '[{"n":"x","v":1}] // warm',
  'a comment within': '[{"n":"x",/* warm */"v":1}]',
  'single quotes': "[{'n':'x','v':1}]",
  'labels without quotes': '[{n:"x",v:1}]',
  'no colon': '[{"n" "x","v":1}]',
  'an equals sign': '[{"n"="x","v"=1}]',
  'a text that does not end': '[{"n":"x',
  'a line end within a text': '[{"n":"x\n","v":1}]',
  'an escape that is none': '[{"n":"\\x41","v":1}]',
  'half an escape': '[{"n":"\\u00","v":1}]',
  'a form feed between': '[\f{"n":"x","v":1}]',
  'a wide blank between': '[\u00a0{"n":"x","v":1}]',
  'plain words': 'outlet=31.2',
  XML: '<sensml/>',
  'a form': 'outlet=31&wall=20',
  'lines of CSV': 'outlet,31.2\nwall,20\n',
  'lines of JSON': '{"outlet":31}\n{"outlet":32}\n',
})

export const shapes = (): Case[] => {
  const deep = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth)
  const nested = (what: string, payload: string, outcome = '!nested') => ({
    rule: 'class 4 [R: depth is counted before]',
    what,
    payload,
    outcome,
  })
  const whole = (what: string, payload: string, outcome: string) => ({ rule: 'class 5 [RFC 8428, 4; W 10]', what, payload, outcome })
  return [
    ...Object.entries(noJson()).map(([what, payload]) => ({ rule: 'class 5 [RFC 8259, 2 to 4]', what, payload, outcome: '!bad-json' })),
    {
      rule: 'class 5 [RFC 8259, 2]',
      what: 'blanks around everything',
      payload: ' \t\r\n[ { "n" : "x" , "u":"Cel" , "v" : 1 } ]\n',
      outcome: 'x=1',
    },
    { rule: 'class 5 [RFC 8259, 7]', what: 'a name in escapes', payload: '[{"n":"\\u0078","\\u0076":1,"u":"Cel"}]', outcome: 'x=1' },
    whole('a text', '"outlet"', '!not-a-pack'),
    whole('a number', '31.2', '!not-a-pack'),
    whole('true', 'true', '!not-a-pack'),
    whole('null', 'null', '!not-a-pack'),
    whole('an empty pack', '[]', '!empty-pack'),
    whole('an empty object', '{}', '!empty-pack'),
    ...['7', '"x"', 'null', 'true', '[]', '[1]'].map((item) =>
      whole(`${item} in place of a record`, `[${item},{"bn":"yard/n1/","n":"wall","u":"Cel","v":20}]`, `${wall} !not-a-record#0`),
    ),
    whole('a record without anything', '[{},{"bn":"yard/n1/","n":"wall","u":"Cel","v":20}]', wall),
    nested('eight levels', deep(8), '!not-a-record#0'),
    nested('nine levels', deep(9)),
    nested('a thousand levels', deep(1000)),
    nested('60,000 levels that never end', '['.repeat(60_000)),
    nested('nine objects', `${'{"a":'.repeat(9)}1${'}'.repeat(9)}`),
    nested('lists and objects in turn', `${'[{"a":'.repeat(5)}1${'}]'.repeat(5)}`),
    nested('a list in a record', two('"n":"x","v":1,"extra":[1]'), `${wall} !nested#0`),
    nested('an object in a record', two('"n":"x","v":1,"extra":{"a":1}'), `${wall} !nested#0`),
    nested('brackets within a text', two(`"n":"x","v":1,"extra":"${'['.repeat(50)}"`), `x=1 ${wall}`),
    ...(
      [
        [512, '512 samples'],
        [513, '!too-many-records'],
        [3000, '!too-many-records'],
      ] as const
    ).map(([count, outcome]) => ({
      rule: 'class 3 [W 9: 512 records]',
      what: `${count} records`,
      payload: `[{"bu":"Cel","n":"x","v":1}${',{"n":"x","v":1}'.repeat(count - 1)}]`,
      outcome,
    })),
    ...([65_536, 65_537, 200_000] as const).map((size) => ({
      rule: 'class 1 [W 9: 64 KiB]',
      what: `${size} bytes`,
      payload: x('1').padEnd(size),
      outcome: size > 65_536 ? '!pack-too-large' : `x=1 ${wall}`,
    })),
  ]
}

export const bare = (): Case[] => {
  const of = (what: string, payload: string, outcome: string) => ({ rule: 'class 10 [W 10]', what, payload, outcome })
  return [
    of('one number', '{"x":31.2}', 'x=31.2'),
    of('two numbers', '{"x":31.2,"wall":20}', `x=31.2 ${wall}`),
    of('minus zero', '{"x":-0}', 'x=0'),
    of('a number as text', '{"x":"31","wall":20}', `${wall} !no-number#0`),
    of('true', '{"x":true,"wall":20}', `${wall} !bad-number#0`),
    of('null', '{"x":null,"wall":20}', `${wall} !bad-number#0`),
    of('a list', '{"x":[31],"wall":20}', `${wall} !nested#0`),
    of('an object', '{"x":{"v":31},"wall":20}', `${wall} !nested#0`),
    of('a fault', '{"x":"fault:open","wall":20}', `x=fault:open ${wall}`),
    of('more than a double holds', '{"x":1e999,"wall":20}', `${wall} !bad-number#0`),
    of('what no register holds', '{"x":99999,"wall":20}', `x=fault:range ${wall} !out-of-range#0`),
    of('a blank in the name', '{"the wall":31,"wall":20}', `${wall} !bad-name#0`),
    of('a colon in the name', '{"a:b":31,"wall":20}', `${wall} !unknown-name#0`),
    of('no name', '{"":31,"wall":20}', `${wall} !bad-name#0`),
    of('the whole name', '{"yard/n1/x":31,"wall":20}', `x=31 ${wall}`),
    of('labels of SenML as channels', '{"n":31,"v":20,"bver":42}', 'n=31 v=20 bver=42'),
    of('identity among the numbers', '{"boot":1,"seq":2,"up":3,"wall":20}', wall),
    of('identity that is none', '{"boot":-1,"wall":20}', '!bad-identity'),
    of('GeoJSON', '{"type":"Point","coordinates":[1,2]}', '!no-number#0 !nested#1'),
    of('a state', '{"s":"ready","boot":17}', '!no-number#0'),
  ]
}
