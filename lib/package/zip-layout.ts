import { crc32 } from 'node:zlib'
import { refuseAmbiguous, Unreadable } from './unreadable'

/**
 * Some programs unpack a ZIP by the list at its end, others by the header before each file, and some by a name in an extra
 * field. Where these tell of different files, what was checked is not what somebody else unpacks. Here the two lists and
 * every byte between them must agree; how files are compressed and ordered is free.
 *
 * Source  ISO/IEC 21320-1:2015, Document Container File, Part 1: Core (a profile of ZIP), for the layout of its records
 */
const LOCAL_HEADER = 0x04034b50
const CENTRAL_HEADER = 0x02014b50
const END_RECORD = 0x06054b50
const LOCAL_SIZE = 30
const CENTRAL_SIZE = 46
const END_SIZE = 22
/** Sizes that stand in a field of 64 bits elsewhere. No package is as large. */
const ELSEWHERE = 0xffffffff
const ENCRYPTED = 1
const HAS_DESCRIPTOR = 1 << 3
/** Check and sizes behind a file that was written without knowing them, with and without a mark, of 32 and of 64 bits. */
const DESCRIPTOR_SIZES: readonly number[] = [12, 16, 20, 24]
/** A second name of a file, in UTF-8 (Info-ZIP; id from common practice, no published standard). */
const UNICODE_PATH = 0x7075

export interface ZipEntry {
  readonly name: string
  readonly crc: number
  readonly size: number
}

interface Placed extends ZipEntry {
  readonly start: number
  readonly end: number
  readonly hasDescriptor: boolean
}

/** @throws Unreadable where two programs may unpack different files */
export function checkZipLayout(bytes: Uint8Array): readonly ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const endAt = findEnd(view)
  const count = view.getUint16(endAt + 10, true)
  const listAt = view.getUint32(endAt + 16, true)
  const entries: Placed[] = []
  let at = listAt
  for (let index = 0; index < count; index += 1) {
    if (at + CENTRAL_SIZE > endAt || view.getUint32(at, true) !== CENTRAL_HEADER) {
      refuseAmbiguous(null, 'its list of files is broken')
    }
    entries.push(readEntry(bytes, view, at, listAt))
    at += CENTRAL_SIZE + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true)
  }
  if (at !== endAt) refuseAmbiguous(null, 'something follows its list of files')
  requireNoGap(entries, listAt)
  return entries
}

/** As unpackers look for it: the last one in the file, whose comment ends with the file. */
function findEnd(view: DataView): number {
  for (let at = view.byteLength - END_SIZE; at >= Math.max(0, view.byteLength - END_SIZE - 0xffff); at -= 1) {
    if (view.getUint32(at, true) !== END_RECORD) continue
    if (at + END_SIZE + view.getUint16(at + 20, true) !== view.byteLength) {
      refuseAmbiguous(null, 'something follows its end')
    }
    return at
  }
  throw new Unreadable('unreadable', null, 'the archive has no end: it was cut off')
}

function readEntry(bytes: Uint8Array, view: DataView, at: number, listAt: number): Placed {
  const nameLength = view.getUint16(at + 28, true)
  const nameBytes = bytes.subarray(at + CENTRAL_SIZE, at + CENTRAL_SIZE + nameLength)
  const name = new TextDecoder().decode(nameBytes)
  const flags = view.getUint16(at + 8, true)
  const [crc, packedSize, size] = [16, 20, 24].map((field) => view.getUint32(at + field, true)) as [
    number,
    number,
    number,
  ]
  const start = view.getUint32(at + 42, true)
  if ((flags & ENCRYPTED) !== 0) throw new Unreadable('unreadable', name, `${name} is encrypted`)
  if ([packedSize, size, start].includes(ELSEWHERE)) {
    throw new Unreadable('too-large', name, `${name} is larger than any file of a package`)
  }
  if (start + LOCAL_SIZE > listAt || view.getUint32(start, true) !== LOCAL_HEADER) {
    refuseAmbiguous(name, 'the list points to no file')
  }
  const localNameLength = view.getUint16(start + 26, true)
  const localName = bytes.subarray(start + LOCAL_SIZE, start + LOCAL_SIZE + localNameLength)
  if (!isSame(nameBytes, localName)) refuseAmbiguous(name, 'the file itself has another name')
  if (view.getUint16(start + 8, true) !== view.getUint16(at + 10, true)) {
    refuseAmbiguous(name, 'list and file state different ways of compressing')
  }
  const hasDescriptor = (view.getUint16(start + 6, true) & HAS_DESCRIPTOR) !== 0
  const told = [14, 18, 22].map((field) => view.getUint32(start + field, true))
  const isTold = told[0] === crc && told[1] === packedSize && told[2] === size
  if (!isTold && !hasDescriptor) refuseAmbiguous(name, 'list and file state different sizes')
  const localExtraLength = view.getUint16(start + 28, true)
  const localExtraAt = start + LOCAL_SIZE + localNameLength
  requireSameName(name, nameBytes, bytes.subarray(localExtraAt, localExtraAt + localExtraLength))
  const extraAt = at + CENTRAL_SIZE + nameLength
  requireSameName(name, nameBytes, bytes.subarray(extraAt, extraAt + view.getUint16(at + 30, true)))
  return { name, crc, size, start, end: localExtraAt + localExtraLength + packedSize, hasDescriptor }
}

/** A name in an extra field, if any, says the same. */
function requireSameName(name: string, nameBytes: Uint8Array, extra: Uint8Array): void {
  const view = new DataView(extra.buffer, extra.byteOffset, extra.byteLength)
  for (let at = 0; at + 4 <= extra.length; ) {
    const size = view.getUint16(at + 2, true)
    const isPath = view.getUint16(at, true) === UNICODE_PATH
    // One byte of version and four of a check stand before the name.
    if (isPath && !isSame(nameBytes, extra.subarray(at + 9, at + 4 + size))) {
      refuseAmbiguous(name, 'it has a second name')
    }
    at += 4 + size
  }
}

/** From the first byte to the list, files follow one another: nothing is hidden between them, nor shared by two. */
function requireNoGap(entries: readonly Placed[], listAt: number): void {
  const sorted = entries.toSorted((a, b) => a.start - b.start)
  if ((sorted[0]?.start ?? listAt) !== 0) refuseAmbiguous(null, 'something stands before its first file')
  sorted.forEach((entry, index) => {
    const gap = (sorted[index + 1]?.start ?? listAt) - entry.end
    const isFree = gap === 0 || (entry.hasDescriptor && DESCRIPTOR_SIZES.includes(gap))
    if (!isFree) refuseAmbiguous(entry.name, 'something else stands between it and what follows')
  })
}

function isSame(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((byte, at) => byte === b[at])
}

/** @throws Unreadable where what was unpacked is not what the archive says */
export function checkUnpacked(entry: ZipEntry, content: Uint8Array): void {
  if (content.length === entry.size && crc32(content) === entry.crc) return
  throw new Unreadable('damaged', entry.name, `${entry.name} is damaged: it does not match the archive’s record of it`)
}
