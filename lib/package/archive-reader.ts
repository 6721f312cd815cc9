import { crc32 } from 'node:zlib'
import type { Issue, Result } from '@/lib/engine'
import type { PackageFile } from './content'

/**
 * A strict reader of stored ZIP archives. General readers follow the central directory and ignore the rest, so bytes
 * could be changed, hidden or appended without notice; this one accounts for every byte of the file.
 *
 * Source  ISO/IEC 21320-1:2015, Document Container File, Part 1: Core (a profile of ZIP)
 */
const LOCAL_HEADER = 0x04034b50
const CENTRAL_HEADER = 0x02014b50
const END_RECORD = 0x06054b50
const LOCAL_SIZE = 30
const CENTRAL_SIZE = 46
const END_SIZE = 22

/** Fields that are the same in every entry of a package. */
const VERSION_NEEDED = 20
const DOS_TIME = 12 << 11
const DOS_DATE = (1 << 5) | 1

interface Entry {
  readonly path: string
  readonly offset: number
  readonly size: number
  readonly crc: number
}

class Difference extends Error {
  constructor(
    readonly code: string,
    readonly file: string | null,
    message: string,
  ) {
    super(message)
  }
}

/** @param bytes  of the whole file; the entries returned share its memory */
export function readArchiveEntries(bytes: Uint8Array, maxFiles: number): Result<PackageFile[]> {
  try {
    return { ok: true, value: readEntries(bytes, maxFiles) }
  } catch (error) {
    if (!(error instanceof Difference)) throw error
    const issue: Issue = { code: error.code, path: error.file === null ? [] : [error.file], message: error.message }
    return { ok: false, issues: [issue] }
  }
}

function readEntries(bytes: Uint8Array, maxFiles: number): PackageFile[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (bytes.length < END_SIZE || view.getUint32(0, true) !== LOCAL_HEADER) {
    throw new Difference('not-a-zip', null, 'the file is not a release package: it does not begin like a ZIP archive')
  }
  const endAt = bytes.length - END_SIZE
  if (view.getUint32(endAt, true) !== END_RECORD) {
    throw new Difference(
      'truncated',
      null,
      'the archive does not end where it should: it was cut off, or something was appended to it',
    )
  }
  const count = view.getUint16(endAt + 10, true)
  const directorySize = view.getUint32(endAt + 12, true)
  const directoryAt = view.getUint32(endAt + 16, true)
  expectFields(view, endAt, null, 'the end of the archive', [
    [4, 2, 0],
    [6, 2, 0],
    [8, 2, count],
    [20, 2, 0],
  ])
  if (count > maxFiles) {
    throw new Difference('too-many-files', null, `the archive lists ${count} files; a package has at most ${maxFiles}`)
  }
  if (directoryAt + directorySize !== endAt) {
    throw new Difference('structure', null, 'the list of files is not where the end of the archive says it is')
  }
  const entries = readDirectory(bytes, view, directoryAt, endAt, count)
  let position = 0
  const files = entries.map((entry) => {
    if (entry.offset !== position) {
      throw new Difference('structure', entry.path, `${entry.path} does not begin where the file before it ends`)
    }
    const start = checkLocalHeader(bytes, view, entry, directoryAt)
    position = start + entry.size
    const content = bytes.subarray(start, position)
    if (crc32(content) !== entry.crc) {
      throw new Difference('changed', entry.path, `${entry.path} was changed: its checksum does not fit`)
    }
    return { path: entry.path, bytes: content }
  })
  if (position !== directoryAt) {
    throw new Difference('structure', null, 'there are bytes between the last file and the list of files')
  }
  return files
}

function readDirectory(bytes: Uint8Array, view: DataView, from: number, to: number, count: number): Entry[] {
  const entries: Entry[] = []
  let at = from
  for (let index = 0; index < count; index += 1) {
    if (at + CENTRAL_SIZE > to || view.getUint32(at, true) !== CENTRAL_HEADER) {
      throw new Difference('structure', null, `entry ${index + 1} of the list of files is damaged`)
    }
    const nameLength = view.getUint16(at + 28, true)
    if (at + CENTRAL_SIZE + nameLength > to) {
      throw new Difference('structure', null, `entry ${index + 1} of the list of files is damaged`)
    }
    const path = readName(bytes, at + CENTRAL_SIZE, nameLength)
    const size = view.getUint32(at + 24, true)
    expectFields(view, at, path, `the list entry of ${path}`, [
      [4, 2, VERSION_NEEDED],
      [6, 2, VERSION_NEEDED],
      [8, 2, 0],
      [10, 2, 0],
      [12, 2, DOS_TIME],
      [14, 2, DOS_DATE],
      [20, 4, size],
      [30, 2, 0],
      [32, 2, 0],
      [34, 2, 0],
      [36, 2, 0],
      [38, 4, 0],
    ])
    entries.push({ path, size, crc: view.getUint32(at + 16, true), offset: view.getUint32(at + 42, true) })
    at += CENTRAL_SIZE + nameLength
  }
  if (at !== to) throw new Difference('structure', null, 'the list of files is longer than its entries')
  return entries
}

/** @returns where the content begins */
function checkLocalHeader(bytes: Uint8Array, view: DataView, entry: Entry, limit: number): number {
  const { path, offset, size, crc } = entry
  const nameLength = path.length
  const start = offset + LOCAL_SIZE + nameLength
  if (start + size > limit) {
    throw new Difference('structure', path, `${path} would reach beyond the end of the files`)
  }
  expectFields(view, offset, path, `the header of ${path}`, [
    [0, 4, LOCAL_HEADER],
    [4, 2, VERSION_NEEDED],
    [6, 2, 0],
    [8, 2, 0],
    [10, 2, DOS_TIME],
    [12, 2, DOS_DATE],
    [14, 4, crc],
    [18, 4, size],
    [22, 4, size],
    [26, 2, nameLength],
    [28, 2, 0],
  ])
  if (readName(bytes, offset + LOCAL_SIZE, nameLength) !== path) {
    throw new Difference('structure', path, `the header of ${path} names another file`)
  }
  return start
}

type Field = readonly [offset: number, size: 2 | 4, expected: number]

function expectFields(view: DataView, at: number, file: string | null, what: string, fields: readonly Field[]): void {
  for (const [offset, size, expected] of fields) {
    const found = size === 2 ? view.getUint16(at + offset, true) : view.getUint32(at + offset, true)
    if (found !== expected) {
      throw new Difference(
        'structure',
        file,
        `${what} was changed at byte ${at + offset}: ${found} where ${expected} is expected`,
      )
    }
  }
}

/** Names are ASCII; any other byte is shown as a question mark and fails the check of paths. */
function readName(bytes: Uint8Array, at: number, length: number): string {
  let name = ''
  for (const byte of bytes.subarray(at, at + length))
    name += byte >= 0x20 && byte < 0x7f ? String.fromCharCode(byte) : '?'
  return name
}
