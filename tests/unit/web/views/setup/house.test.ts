import { expect, test } from 'vitest'
import { isNodeName, nodeRows } from '../../../../../web/src/views/setup/house/node-rows.ts'
import { byteCount, rawText } from '../../../../../web/src/views/setup/house/raw-bytes.ts'

const base64 = (bytes: string | Uint8Array) => Buffer.from(bytes).toString('base64')

test('what a stranger sent is shown as text or as bytes, with a mark for what can not be seen', () => {
  expect(rawText(base64('{"a":1}'))).toBe('{"a":1}')
  expect(rawText(base64('a\u0007\u200b\u202eb\n'))).toBe('a\ufffd\ufffd\ufffdb\ufffd')
  expect(rawText(base64(Uint8Array.of(0xc0, 0x80)))).toBe('c0 80')
  expect(rawText(base64(new Uint8Array(17).fill(255))).split('\n')).toHaveLength(2)
  for (let size = 0; size < 5; size++) expect(byteCount(base64(new Uint8Array(size)))).toBe(size)
})

test('nodes that were heard and nodes with a secret make one list, those that wait first', () => {
  const rows = nodeRows(
    [{ node: 'yard/n1' }, { node: 'yard/n3' }],
    [
      { node: 'n1', state: 'paired', at: 1, fingerprint: 'a' },
      { node: 'n9', state: 'held', at: 2, fingerprint: 'b' },
    ],
  )
  expect(rows.map(({ node, key }) => [node, key?.state ?? null])).toEqual([
    ['n9', 'held'],
    ['n3', null],
    ['n1', 'paired'],
  ])
  expect(['n1', 'a-b', 'server', 'N1', '', 'a'.repeat(33)].map(isNodeName)).toEqual([true, true, false, false, false, false])
})
