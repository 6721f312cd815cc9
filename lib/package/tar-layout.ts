import { refuseAmbiguous } from './unreadable'

/**
 * Readers of TAR differ in where they stop, in which headers they heed, and in what they make of names. Here every block
 * counts: each header fits its sum, has a name of its own, and states its size where all read it; after the end there is
 * nothing.
 *
 * Source  POSIX.1-2017, pax, "ustar Interchange Format" and "pax Extended Header"
 */
const BLOCK = 512
const FIELDS = { name: [0, 100], size: [124, 12], sum: [148, 8], type: [156, 1], prefix: [345, 155] } as const
type Field = keyof typeof FIELDS

/** @throws Unreadable where two programs may unpack different files */
export function checkTarLayout(bytes: Uint8Array): void {
  let at = 0
  while (at + BLOCK <= bytes.length) {
    const block = bytes.subarray(at, at + BLOCK)
    if (block.every((byte) => byte === 0)) {
      if (bytes.subarray(at).some((byte) => byte !== 0)) refuseAmbiguous(null, 'something follows its end')
      return
    }
    const name = readText(block, 'name')
    if (name === '' || readNumber(block, 'sum') !== sumOf(block)) refuseAmbiguous(null, 'a header in it is broken')
    const size = readNumber(block, 'size')
    if (size === null) refuseAmbiguous(name, 'its size is written in an unusual way')
    const type = readText(block, 'type')
    const content = bytes.subarray(at + BLOCK, at + BLOCK + size)
    if (content.length < size) refuseAmbiguous(name, 'it was cut off')
    if (type === 'x' || type === 'g') requireHarmless(name, content)
    else if (type === 'L') requireInside(new TextDecoder().decode(content))
    else requireInside(name)
    // The reader used here takes the short field alone; no name of a package is long enough for the other.
    if (readText(block, 'prefix') !== '' && !isGnu(block)) refuseAmbiguous(name, 'its name stands in two fields')
    at += BLOCK + Math.ceil(size / BLOCK) * BLOCK
  }
}

/** What an extended header may say without changing which bytes a file has: anything but a size, or that it has holes. */
function requireHarmless(name: string, content: Uint8Array): void {
  const text = new TextDecoder().decode(content)
  if (/(^|\n)\d+ (size|GNU\.sparse\.[^=]*|hdrcharset)=/.test(text)) {
    refuseAmbiguous(name, 'an extended header says otherwise')
  }
  const [, path = ''] = /(?:^|\n)\d+ path=([^\n]*)/.exec(text) ?? []
  requireInside(path)
}

function requireInside(name: string): void {
  if (/(^|\/)\.\.(\/|$)|^\//.test(name)) refuseAmbiguous(name, 'its name leads out of the folder')
}

/** GNU's own form keeps times where the standard's has the prefix. */
const isGnu = (block: Uint8Array) => new TextDecoder('latin1').decode(block.subarray(257, 265)) === 'ustar  \0'

function readText(block: Uint8Array, field: Field): string {
  const [from, length] = FIELDS[field]
  const bytes = block.subarray(from, from + length)
  const end = bytes.indexOf(0)
  return new TextDecoder().decode(end < 0 ? bytes : bytes.subarray(0, end))
}

/** Octal digits; null for anything else, such as the binary form of very large files. */
function readNumber(block: Uint8Array, field: Field): number | null {
  const text = readText(block, field).trim()
  return /^[0-7]+$/.test(text) ? Number.parseInt(text, 8) : null
}

/** Sum of the header's bytes, with spaces in place of the sum itself. */
function sumOf(block: Uint8Array): number {
  const [from, length] = FIELDS.sum
  return block.reduce((sum, byte, at) => sum + (at >= from && at < from + length ? 0x20 : byte), 0)
}
