import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { LotsAnswer } from '../../../../server/http/lots/routes.ts'
import { bottle, demijohn } from '../../../support/lot-story.ts'
import { RestSite } from '../../../support/rest-site.ts'

describe('the routes of the lots', () => {
  let site: RestSite
  let address: string
  beforeEach(async () => {
    site = new RestSite(Date.parse('2027-01-14T09:00:00'))
    address = await site.start()
  })
  afterEach(() => site.stop())

  const post = (body: string, headers: Record<string, string> = {}): Promise<Response> =>
    fetch(`${address}api/lots/entries`, { method: 'POST', headers: { 'content-type': 'application/json', ...headers }, body })
  const fill = JSON.stringify({
    id: 'a',
    event: { what: 'fill', lot: '7', firing: null, bottles: [bottle(1, 1000)], vessel: demijohn },
  })

  it('keep an entry, say it again in the list, and refuse the next with every reason', async () => {
    expect((await post(fill)).status).toBe(201)
    const refused = await post(JSON.stringify({ id: 'b', event: { what: 'give', lot: '7', volumeMl: 1001 } }))
    expect(refused.status).toBe(422)
    expect(await refused.json()).toMatchObject({ problems: [{ code: 'more-than-there-is', params: { high: 1000 } }] })
    const all = (await (await fetch(`${address}api/lots`)).json()) as LotsAnswer
    expect(all.entries.map(({ id, by }) => [id, by])).toEqual([['a', 'owner']])
    expect(all.today).toEqual({ date: '2027-01-14', clockSure: true })
  })

  it.each([
    ['no JSON', '{', 400],
    ['nothing', '', 422],
    ['another shape', '{"id":"x","event":{"what":"melt"}}', 422],
    ['a number as text', '{"id":"x","event":{"what":"give","lot":"7","volumeMl":"4"}}', 422],
  ])('turn away %s and keep nothing', async (_, body, status) => {
    expect((await post(body)).status).toBe(status)
    expect(((await (await fetch(`${address}api/lots`)).json()) as LotsAnswer).entries).toEqual([])
  })

  it('take no entry from another page', async () => {
    expect((await post(fill, { origin: 'http://elsewhere.example' })).status).toBe(403)
  })

  it('draw the square code of a lot that is there, for an address of a page and nothing else', async () => {
    await post(fill)
    const code = await fetch(`${address}api/lots/7/code?address=${encodeURIComponent(address)}`)
    expect(code.headers.get('content-type')).toBe('image/svg+xml')
    expect(await code.text()).toContain('<path')
    expect((await fetch(`${address}api/lots/8/code`)).status).toBe(404)
    expect((await fetch(`${address}api/lots/7/code?address=javascript:alert(1)`)).status).toBe(422)
  })
})
