export const toBase64 = (bytes: Uint8Array): string => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('base64')

export const fromBase64 = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'base64'))
