import { fileURLToPath } from 'node:url'
import globals from 'globals'
import importX from 'eslint-plugin-import-x'
import svelte from 'eslint-plugin-svelte'
import tseslint from 'typescript-eslint'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** Who may import whom (architecture: contract <- domain <- storage, recordings, runtime <- mqtt, http <- app; the simulator knows only contract). */
const mayImport = {
  contract: [],
  domain: ['contract'],
  settings: ['contract'],
  storage: ['contract', 'domain'],
  runtime: ['contract', 'domain', 'storage'],
  recordings: ['contract', 'domain', 'storage', 'runtime'],
  mqtt: ['contract', 'domain', 'storage', 'runtime'],
  http: ['contract', 'domain', 'storage', 'runtime', 'recordings', 'settings'],
  simulator: ['contract'],
}
const rooms = Object.keys(mayImport)
/** `server/replay` is a program of its own: it speaks with the page's words, and nobody imports it. */
const outside = ['./server/app.ts', './server/main.ts', './server/replay', './web', './tests']
const wrongArrow = 'This arrow is not in the house plan (DEVELOPERS.md).'
const zones = [
  ...rooms.flatMap((room) => {
    const shut = rooms.filter((other) => other !== room && !mayImport[room].includes(other)).map((other) => `./server/${other}`)
    return [...shut, ...outside].map((from) => ({ target: `./server/${room}`, from, message: wrongArrow }))
  }),
  ...[
    ...rooms.filter((room) => room !== 'contract' && room !== 'domain').map((room) => `./server/${room}`),
    './server/app.ts',
    './server/main.ts',
    './server/replay',
    './tests',
  ].map((from) => ({ target: './web', from, message: wrongArrow })),
  ...['./web/src/views', './web/src/words'].map((target) => ({
    target,
    from: './server/domain',
    message: 'Through web/src/lib/domain.ts.',
  })),
]

export default tseslint.config(
  { ignores: ['.build/**', 'node_modules/**', 'data/**', 'tests/.out/**', 'firmware-notes/**'] },
  {
    files: ['**/*.{ts,js,mjs,svelte}'],
    extends: [tseslint.configs.recommended, tseslint.configs.stylistic],
    plugins: { 'import-x': importX },
    settings: {
      'import-x/resolver-next': [importX.createNodeResolver({ extensions: ['.ts', '.mts', '.js', '.mjs', '.svelte'] })],
      'import-x/parsers': { '@typescript-eslint/parser': ['.ts', '.mts'] },
    },
    rules: {
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      '@typescript-eslint/consistent-type-definitions': 'off',
      '@typescript-eslint/no-empty-function': 'off',
      '@typescript-eslint/no-explicit-any': 'error',
      '@typescript-eslint/consistent-type-imports': 'error',
      'import-x/no-default-export': 'off',
      'import-x/no-restricted-paths': ['error', { basePath: root, zones }],
      'max-lines': ['error', { max: 400 }],
      eqeqeq: ['error', 'always'],
    },
  },
  {
    files: ['server/domain/**/*.ts', 'server/contract/**/*.ts'],
    rules: {
      '@typescript-eslint/no-non-null-assertion': 'error',
      'no-restricted-syntax': [
        'error',
        {
          selector: "BinaryExpression[operator='**']",
          message: 'Node 20 and 24 give different last bits: multiply, or use Math.exp and Math.log.',
        },
        { selector: "AssignmentExpression[operator='**=']", message: 'Node 20 and 24 give different last bits.' },
        { selector: "MemberExpression[object.name='Math'][property.name='pow']", message: 'Node 20 and 24 give different last bits.' },
        {
          selector: "MemberExpression[object.name='Math'][property.name='random']",
          message: 'Randomness is an argument: a seeded generator in the state.',
        },
        { selector: "MemberExpression[object.name='Date'][property.name='now']", message: 'Time is an argument.' },
        { selector: "NewExpression[callee.name='Date'][arguments.length=0]", message: 'Time is an argument.' },
      ],
    },
  },
  { files: ['**/tables/**', '**/words/**'], rules: { 'max-lines': 'off' } },
  { files: ['tests/**', 'server/**'], languageOptions: { globals: globals.node } },
  ...svelte.configs.recommended,
  {
    files: ['**/*.svelte', '**/*.svelte.ts'],
    languageOptions: { globals: globals.browser, parserOptions: { parser: tseslint.parser, extraFileExtensions: ['.svelte'] } },
    // props are taken apart in one go, also where one of them is bound and therefore assigned
    rules: { 'prefer-const': ['error', { destructuring: 'all' }] },
  },
  { files: ['web/**'], languageOptions: { globals: globals.browser } },
)
