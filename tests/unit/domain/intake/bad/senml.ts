import { beside, two, wall, type Case } from './case.ts'

/** Every label of RFC 8428, table 1, with a value of every JSON type. */
export const types = (): Case[] => {
  const values = { text: '"q"', number: '-7', truth: 'true', null: 'null', list: '[]', object: '{}' }
  type Kind = keyof typeof values
  /** What the wrong type earns, and what the right ones lead to. */
  const labels: Record<string, { wrong: string; right: Partial<Record<Kind, string>>; base?: true; value?: true }> = {
    n: { wrong: 'bad-name', right: { text: `q=1 ${wall}` } },
    u: { wrong: 'bad-field', right: { text: `${wall} !unknown-unit#0` } },
    t: { wrong: 'bad-number', right: { number: `x=1@-7s ${wall}` } },
    ut: { wrong: 'bad-number', right: { number: `x=1 ${wall}` } },
    s: { wrong: 'bad-number', right: { number: `x=1 ${wall}` } },
    v: { wrong: 'bad-number', right: { number: `x=-7 ${wall}` }, value: true },
    vs: { wrong: 'bad-field', right: { text: `${wall} !no-number#0` }, value: true },
    vb: { wrong: 'no-number', right: {}, value: true },
    vd: { wrong: 'no-number', right: {}, value: true },
    bn: { wrong: 'bad-base', right: { text: '!foreign-name#0 !foreign-name#1' }, base: true },
    bt: { wrong: 'bad-base', right: { number: 'x=1@-7s wall=20@-7s' }, base: true },
    bu: { wrong: 'bad-base', right: { text: '!unknown-unit#0 !unknown-unit#1' }, base: true },
    bv: { wrong: 'bad-base', right: { number: 'x=-6 wall=13' }, base: true },
    bs: { wrong: 'bad-base', right: { number: `x=1 ${wall}` }, base: true },
    bver: { wrong: 'unknown-version', right: {}, base: true },
  }
  return Object.entries(labels).flatMap(([label, { wrong, right, base, value }]) =>
    Object.entries(values).map(([kind, text]) => {
      const fields = { bn: '"yard/n1/"', bu: '"Cel"', n: '"x"', ...(value ? {} : { v: '1' }), [label]: text }
      const refusal = base ? `!${wrong}` : `${wall} !${kind === 'list' || kind === 'object' ? 'nested' : wrong}#0`
      const record = Object.entries(fields).map(([name, field]) => `"${name}":${field}`)
      return {
        rule: 'class 10 [RFC 8428, table 1]',
        what: `${label} as ${kind}`,
        payload: `[{${record.join(',')}},${beside}]`,
        outcome: right[kind as Kind] ?? refusal,
      }
    }),
  )
}

/** RFC 8428, 4.5.1: letters, digits and `- : . / _`; our channels begin with a letter or a digit and have no colon. */
export const names = (): Case[] => {
  const legal = '-:./_'
  const named = (name: string): string => two(`"n":${JSON.stringify(name)},"v":1`)
  const marks = '!"#$%&\'()*+,-./:;<=>?@[\\]^_`{|}~ '
  return [
    ...[...marks].flatMap((mark) => [
      {
        rule: 'class 19 [RFC 8428, 4.5.1]',
        what: `${mark} within a name`,
        payload: named(`a${mark}b`),
        outcome: !legal.includes(mark) ? `${wall} !bad-name#0` : mark === ':' ? `${wall} !unknown-name#0` : `a${mark}b=1 ${wall}`,
      },
      {
        rule: 'class 19 [RFC 8428, 4.5.1; W 9]',
        what: `${mark} before a name`,
        payload: named(`${mark}b`),
        outcome: `${wall} !${legal.includes(mark) ? 'unknown' : 'bad'}-name#0`,
      },
    ]),
    ...['\u00e9', '\u6c34', '\u{1f525}', '\0', '\n', '\t', '\u202e', '\ufeff', '\uff41', '\u0430', '\u200b', '\ud800'].map((letter) => ({
      rule: 'class 19 [RFC 8428, 4.5.1]',
      what: `U+${(letter.codePointAt(0) ?? 0).toString(16)} in a name`,
      payload: named(`a${letter}`),
      outcome: `${wall} !bad-name#0`,
    })),
    ...(
      [
        [64, 'fine'],
        [65, 'unknown-name'],
        [248, 'unknown-name'],
        [249, 'bad-name'],
        [5000, 'bad-name'],
      ] as const
    ).map(([length, outcome]) => ({
      rule: 'class 3 [W 9: 64 letters a channel, 256 a name]',
      what: `a name of ${length} letters`,
      payload: named('w'.repeat(length)),
      outcome: outcome === 'fine' ? `${'w'.repeat(64)}=1 ${wall}` : `${wall} !${outcome}#0`,
    })),
    { rule: 'class 19 [W 9]', what: 'an empty name', payload: named(''), outcome: `${wall} !unknown-name#0` },
    ...['constructor', 'toString', 'hasOwnProperty', 'valueOf', 'prototype'].map((name) => ({
      rule: 'class 8 [R: as a value it is a name like others]',
      what: `the name ${name}`,
      payload: named(name),
      outcome: `${name}=1 ${wall}`,
    })),
    ...Object.entries({
      'yard/n2/': 'another node',
      'meadow/n1/': 'another site',
      'YARD/N1/': 'capital letters',
      'yard/n1': 'no slash at its end',
      'urn:dev:mac:0024befffe804ff1:': 'a URN that was not announced',
      'yard/n1x/': 'a name that only begins alike',
      '1/': 'a number',
    }).map(([base, what]) => ({
      rule: 'class 18 [W 9]',
      what: `a base name with ${what}`,
      payload: `[{"bn":"${base}","n":"x","u":"Cel","v":1},{"bn":"yard/n1/","n":"wall","u":"Cel","v":20}]`,
      outcome: `${wall} !foreign-name#0`,
    })),
    {
      rule: 'class 17 [RFC 8428, 4.1]',
      what: 'the whole name in the record',
      payload: '[{"n":"yard/n1/x","u":"Cel","v":1}]',
      outcome: 'x=1',
    },
    { rule: 'class 17 [W 9]', what: 'no base name at all', payload: '[{"n":"x","u":"Cel","v":1}]', outcome: 'x=1' },
  ]
}

export const labels = (): Case[] => [
  ...Object.entries({
    'v twice': '"n":"x","v":1,"v":2',
    'v twice, the same': '"n":"x","v":1,"v":1',
    'n twice': '"n":"x","n":"y","v":1',
    'v three times': '"n":"x","v":1,"v":2,"v":3',
    't twice': '"n":"x","v":1,"t":0,"t":-5',
    'v twice, once in escapes': '"n":"x","v":1,"\\u0076":2',
    'the base name twice': '"bn":"yard/n2/","n":"x","v":1',
    'an unknown label twice': '"n":"x","v":1,"a":1,"a":2',
  }).map(([what, fields]) => ({ rule: 'class 7 [R; RFC 8259, 4]', what, payload: two(fields), outcome: '!duplicate-name' })),
  { rule: 'class 7 [R]', what: 'a channel twice in a bare object', payload: '{"x":1,"x":2}', outcome: '!duplicate-name' },
  ...['__proto__', 'constructor', 'prototype', '\\u005f_proto__', 'construc\\u0074or'].flatMap((name) => [
    { rule: 'class 8 [R]', what: `the label ${name}`, payload: two(`"n":"x","v":1,"${name}":1`), outcome: '!unsafe-name' },
    { rule: 'class 8 [R]', what: `the channel ${name} of a bare object`, payload: `{"${name}":1}`, outcome: '!unsafe-name' },
    {
      rule: 'class 8 [R]',
      what: `${name} further down`,
      payload: two(`"n":"x","v":1,"a":{"${name}":{"polluted":1}}`),
      outcome: '!unsafe-name',
    },
  ]),
  ...['a_', '_', 'v_', 'n_', 'bver_', 'must-understand_', '__'].map((label) => ({
    rule: 'class 14 [RFC 8428, 4.4]',
    what: `the label ${label}, which must be understood`,
    payload: two(`"n":"x","v":1,"${label}":1`),
    outcome: '!unknown-label',
  })),
  ...['a', '_a', 'V', 'N', 'T', 'colour', 'unit', 'value', 'time', 'toString', '\u00e9', ''].map((label) => ({
    rule: 'class 14 [RFC 8428, 4.4]',
    what: `the label ${JSON.stringify(label)}, which may be passed over`,
    payload: two(`"n":"x","v":1,"${label}":5`),
    outcome: `x=1 ${wall}`,
  })),
  ...Array.from({ length: 33 }, (_, index) => index - 1).map((version) => ({
    rule: 'class 14 [RFC 9100; W 9: 10, less, and 26]',
    what: `version ${version}`,
    payload: two(`"bver":${version},"n":"x","v":1`),
    outcome: (version >= 1 && version <= 10) || version === 26 ? `x=1 ${wall}` : '!unknown-version',
  })),
  ...['10.5', '1e1', '1e300', '58', '4294967306'].map((version) => ({
    rule: 'class 14 [RFC 8428, 4.4]',
    what: `version ${version}`,
    payload: two(`"bver":${version},"n":"x","v":1`),
    outcome: version === '1e1' ? `x=1 ${wall}` : '!unknown-version',
  })),
  {
    rule: 'class 14 [RFC 8428, 4.4: all of one version]',
    what: 'two versions',
    payload: '[{"bver":10,"n":"x","u":"Cel","v":1},{"bver":5,"n":"wall","u":"Cel","v":20}]',
    outcome: '!unknown-version',
  },
]
