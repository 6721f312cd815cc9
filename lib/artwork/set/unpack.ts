import { inflateSync } from 'fflate'
import { quote } from '../audit'

/** A file of a set by its name; folders of an archive are part of the name. */
export interface NamedFile {
  readonly name: string
  readonly bytes: Uint8Array
}
export interface RefusedFile {
  readonly name: string
  readonly reason: string
}

const MOST_FILES = 1000
const MOST_BYTES = 512 * 1024 * 1024
/** Text of coordinates packs to a tenth, files of nothing but one stroke to a hundredth. */
const LARGEST_RATIO = 300
const SMALL_BYTES = 1024 * 1024

const END_RECORD = 0x06054b50
const CENTRAL_HEADER = 0x02014b50
const LOCAL_HEADER = 0x04034b50
/** What fields hold whose value stands in the larger form of the format (ZIP64); it needs more than 4 GB or 65 534 files, which no set may have. */
const STANDS_ELSEWHERE_16 = 0xffff
const STANDS_ELSEWHERE_32 = 0xffffffff
const LARGE_FORM =
  'the archive is written in the form for more than 4 GB or 65 534 files (ZIP64), which is not read: please pack it without'

export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 3 || bytes[2] === 5)

/**
 * Files as they come, archives unpacked once (ISO/IEC 21320-1:2015 for the layout). Sizes are looked at before anything is unpacked; an archive in an archive, names that
 * lead elsewhere, and contents that are not what the list says are refused, each with its reason.
 */
export function unpackFiles(given: readonly NamedFile[]): { files: NamedFile[]; refused: RefusedFile[] } {
  const files: NamedFile[] = []
  const refused: RefusedFile[] = []
  const names = new Set<string>()
  let left = MOST_BYTES
  const take = (name: string, size: number, read: () => Uint8Array | string) => {
    const reason =
      refuseName(name, names) ??
      (files.length >= MOST_FILES ? `a set has ${MOST_FILES} files at most` : null) ??
      (size > left ? `the files of a set have ${MOST_BYTES} bytes at most` : null)
    const bytes = reason ?? read()
    if (typeof bytes === 'string') {
      refused.push({ name: name.slice(0, 300), reason: bytes })
      return
    }
    names.add(name.toLowerCase())
    left -= bytes.length
    files.push({ name, bytes })
  }
  for (const { name, bytes } of given) {
    if (!isZip(bytes)) take(name, bytes.length, () => bytes)
    else {
      const list = listZip(bytes)
      if (typeof list === 'string') refused.push({ name, reason: list })
      else
        for (const entry of list) {
          if (entry.name.endsWith('/') && entry.size === 0) continue
          take(entry.name, entry.size, () => inflateEntry(bytes, entry))
        }
    }
  }
  return { files, refused }
}

function refuseName(name: string, names: ReadonlySet<string>): string | null {
  const parts = name.split(/[\\/]/)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: such characters are what is looked for
  if (name === '' || name.length > 300 || /[\u0000-\u001f]/.test(name))
    return 'its name is empty, too long or holds control characters'
  if (parts.includes('..') || /^([\\/]|[A-Za-z]:)/.test(name)) return `its name leads out of its folder: ${quote(name)}`
  return names.has(name.toLowerCase()) ? 'another file of the set has its name' : null
}

interface ZipEntry {
  readonly name: string
  readonly method: number
  readonly flags: number
  readonly crc: number
  readonly packedSize: number
  readonly size: number
  readonly at: number
}

/** The archive's list of files, or why it cannot be used. */
function listZip(bytes: Uint8Array): ZipEntry[] | string {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let end = bytes.length - 22
  while (end >= 0 && end > bytes.length - 22 - 0xffff && view.getUint32(end, true) !== END_RECORD) end -= 1
  if (end < 0 || view.getUint32(end, true) !== END_RECORD) return 'the archive has no end: it was cut off'
  const count = view.getUint16(end + 10, true)
  let at = view.getUint32(end + 16, true)
  const listSize = view.getUint32(end + 12, true)
  if (count === STANDS_ELSEWHERE_16 || [at, listSize].includes(STANDS_ELSEWHERE_32)) return LARGE_FORM
  const entries: ZipEntry[] = []
  for (let index = 0; index < count; index += 1) {
    if (at + 46 > end || view.getUint32(at, true) !== CENTRAL_HEADER) return 'the archive’s list of files is broken'
    const [nameLength, extraLength, commentLength] = [28, 30, 32].map((field) => view.getUint16(at + field, true)) as [
      number,
      number,
      number,
    ]
    const [packedSize, size, localAt] = [20, 24, 42].map((field) => view.getUint32(at + field, true)) as [
      number,
      number,
      number,
    ]
    if ([packedSize, size, localAt].includes(STANDS_ELSEWHERE_32)) return LARGE_FORM
    entries.push({
      name: new TextDecoder().decode(bytes.subarray(at + 46, at + 46 + nameLength)),
      flags: view.getUint16(at + 8, true),
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packedSize,
      size,
      at: localAt,
    })
    at += 46 + nameLength + extraLength + commentLength
  }
  return entries
}

function inflateEntry(bytes: Uint8Array, { at, crc, flags, method, packedSize, size }: ZipEntry): Uint8Array | string {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if ((flags & 1) !== 0) return 'it is encrypted'
  if (size > SMALL_BYTES && size > LARGEST_RATIO * packedSize)
    return `it would unpack to ${Math.round(size / packedSize)} times its size`
  if (at + 30 > bytes.length || view.getUint32(at, true) !== LOCAL_HEADER) return 'the archive’s list points to no file'
  const start = at + 30 + view.getUint16(at + 26, true) + view.getUint16(at + 28, true)
  if (start + packedSize > bytes.length) return 'it is cut off'
  const packed = bytes.subarray(start, start + packedSize)
  let content: Uint8Array
  try {
    if (method === 0) content = packed
    else if (method === 8) content = inflateSync(packed, { out: new Uint8Array(size) })
    else return 'it is packed in a way that is not read'
  } catch {
    return 'what is packed is damaged'
  }
  if (content.length !== size || crcOf(content) !== crc) return 'it does not hold what the archive’s list says'
  return isZip(content) ? 'an archive in an archive is not unpacked' : content
}

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, index) => {
  let value = index
  for (let bit = 0; bit < 8; bit += 1) value = (value & 1) === 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1
  return value
})

/** CRC-32 as archives use it (ISO/IEC 21320-1). */
function crcOf(bytes: Uint8Array): number {
  let crc = 0xffffffff
  for (const byte of bytes) crc = (CRC_TABLE[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8)
  return (crc ^ 0xffffffff) >>> 0
}
