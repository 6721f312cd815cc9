import { readFileSync } from 'node:fs'

/** Bytes of an example of ours. */
export const readFixture = (file: string): Uint8Array => readFileSync(`test/fixtures/artwork/${file}`)

/** Bytes of a file as written in a test. */
export const toBytes = (text: string): Uint8Array => new TextEncoder().encode(text)
