import { z } from 'zod'
import { actIdSchema } from '../../contract/act-schema.ts'
import { dripLooks } from '../../contract/vocabulary.ts'
import type { DripLook } from '../../contract/vocabulary.ts'
import { glassPictureOf, keepGlassPicture } from '../../recordings/glasses.ts'
import type { GlassPicture } from '../../recordings/glasses.ts'
import { largestPictureBytes } from '../../recordings/schema.ts'
import type { Store } from '../../storage/store.ts'
import type { Answer, Question } from '../context.ts'
import { understood } from '../context.ts'
import { Problem } from '../problem.ts'

const looksKind = 'glass-looks'
const kiln = z.string().regex(/^[A-Za-z0-9._-]{1,64}$/, 'must be 1 to 64 letters, digits, dots, hyphens')

/** For each look of the drip the act of the newest glass that was photographed. */
type Looks = Partial<Record<DripLook, string>>

async function newest<T>(store: Store, kind: string, id: string): Promise<T | null> {
  const last = (await store.history(kind, id)).at(-1)
  return last ? (JSON.parse(last.json) as T) : null
}

/** By its first bytes (JFIF and RIFF/WEBP signatures), whatever it is called. */
function typeOf(bytes: Uint8Array): GlassPicture['type'] | null {
  const text = Buffer.from(bytes.subarray(0, 12)).toString('latin1')
  if (text.startsWith('\xff\xd8\xff')) return 'image/jpeg'
  return text.startsWith('RIFF') && text.endsWith('WEBP') ? 'image/webp' : null
}

/** This kiln's own pictured choices. */
export async function glassLooks({ instance, params }: Question): Promise<Answer> {
  return { json: (await newest<Looks>(instance.store, looksKind, understood(kiln, params.kiln))) ?? {} }
}

export async function glassPicture({ instance, params }: Question): Promise<Answer> {
  const picture = await glassPictureOf(instance.store, understood(kiln, params.kiln), understood(actIdSchema, params.id))
  if (!picture) throw new Problem('not-found')
  // one act has one picture for ever
  const headers = { 'content-type': picture.type, 'cache-control': 'private, max-age=31536000, immutable' }
  return new Response(new Uint8Array(Buffer.from(picture.base64, 'base64')), { headers })
}

/** The picture of one glass, named by the act that logged it. The first one stays: sent again it changes nothing. */
export async function putGlassPicture({ instance, params, query, body, who }: Question): Promise<Answer> {
  const of = understood(kiln, params.kiln)
  const act = understood(actIdSchema, params.id)
  const drip = understood(z.enum(dripLooks), query.get('drip'))
  if (!(body instanceof Uint8Array)) throw new Problem('wrong-type')
  if (body.length > largestPictureBytes) throw new Problem('too-large')
  const type = typeOf(body)
  if (type === null) throw new Problem('not-understood', [{ path: '', what: 'must be a JPEG or WebP picture' }])
  const { store } = instance
  const at = instance.now()
  if (await keepGlassPicture(store, { kiln: of, act, at, by: who }, { type, base64: Buffer.from(body).toString('base64') })) {
    const looks = (await newest<Looks>(store, looksKind, of)) ?? {}
    await store.putDocument({ kind: looksKind, id: of, at, by: who, json: JSON.stringify({ ...looks, [drip]: act }) })
  }
  return null
}
