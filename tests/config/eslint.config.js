import { fileURLToPath } from 'node:url'
import globals from 'globals'
import importX from 'eslint-plugin-import-x'
import svelte from 'eslint-plugin-svelte'
import tseslint from 'typescript-eslint'

const root = fileURLToPath(new URL('../..', import.meta.url))

/** Who may import whom (architecture: contract <- domain <- storage, recordings, runtime <- mqtt, http <- app; the simulator knows only contract). */
const arrows = [
  ['./server/contract', ['./server/!(contract)/**', './server/*.ts', './web', './tests']],
  ['./server/domain', ['./server/!(contract|domain)/**', './server/*.ts', './web', './tests']],
  ['./server/settings', ['./server/!(contract|settings)/**', './server/*.ts', './web', './tests']],
  ['./server/storage', ['./server/!(contract|domain|storage)/**', './server/*.ts', './web', './tests']],
  ['./server/recordings', ['./server/!(contract|domain|recordings|runtime)/**', './server/*.ts', './web', './tests']],
  ['./server/runtime', ['./server/!(contract|domain|storage|runtime)/**', './server/*.ts', './web', './tests']],
  ['./server/mqtt', ['./server/!(contract|domain|runtime|storage|mqtt)/**', './server/*.ts', './web', './tests']],
  ['./server/http', ['./server/!(contract|domain|runtime|storage|recordings|settings|http)/**', './server/*.ts', './web', './tests']],
  ['./server/simulator', ['./server/!(contract|simulator)/**', './server/*.ts', './web', './tests']],
  ['./web', ['./server/!(contract|domain)/**', './server/*.ts', './tests']],
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
      'import-x/no-cycle': ['error', { ignoreExternal: true }],
      'import-x/no-restricted-paths': [
        'error',
        { basePath: root, zones: arrows.map(([target, from]) => ({ target, from, message: 'This arrow is not in the house plan (DEVELOPERS.md).' })) },
      ],
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
        { selector: "BinaryExpression[operator='**']", message: 'Node 20 and 24 give different last bits: multiply, or use Math.exp and Math.log.' },
        { selector: "AssignmentExpression[operator='**=']", message: 'Node 20 and 24 give different last bits.' },
        { selector: "MemberExpression[object.name='Math'][property.name='pow']", message: 'Node 20 and 24 give different last bits.' },
        { selector: "MemberExpression[object.name='Math'][property.name='random']", message: 'Randomness is an argument: a seeded generator in the state.' },
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
  },
  { files: ['web/**'], languageOptions: { globals: globals.browser } },
)
