import 'server-only'
import { refuseField } from './errors'

/** What a file's first bytes say it is. Anything else is kept as plain bytes and never shown in the page. */
const SIGNATURES: readonly { readonly mediaType: string; readonly bytes: readonly number[] }[] = [
  { mediaType: 'application/pdf', bytes: [0x25, 0x50, 0x44, 0x46, 0x2d] },
  { mediaType: 'image/png', bytes: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a] },
  { mediaType: 'image/jpeg', bytes: [0xff, 0xd8, 0xff] },
  { mediaType: 'application/zip', bytes: [0x50, 0x4b, 0x03, 0x04] },
]

/** How much of a file's beginning is looked at. */
export const FILE_HEAD_BYTES = 65_536

/** The beginning of a file, and how long all of it is. */
export interface FileHead {
  readonly head: Uint8Array
  readonly sizeBytes: number
}

/** The media type by content: what a browser or a file name claims is not believed. */
export function findMediaType(file: FileHead): string {
  const found = SIGNATURES.find((signature) => signature.bytes.every((byte, index) => file.head[index] === byte))
  if (found !== undefined) return found.mediaType
  return isText(file) ? 'text/plain' : 'application/octet-stream'
}

function isText({ head, sizeBytes }: FileHead): boolean {
  if (head.includes(0)) return false
  try {
    // A character cut by the head's end is not an error of the file.
    new TextDecoder('utf-8', { fatal: true }).decode(head, { stream: head.length < sizeBytes })
    return true
  } catch {
    return false
  }
}

/** Media types that drawings and artwork come in: text formats (layers, drills, netlists), pictures, PDF, archives. */
const ARTWORK_TYPES: readonly string[] = ['text/plain', 'application/pdf', 'image/png', 'image/jpeg', 'application/zip']

export function requireUsableFile(file: FileHead): string {
  if (file.sizeBytes === 0) refuseField('file', 'empty', 'is empty')
  return findMediaType(file)
}

export function requireArtworkFile(file: FileHead): string {
  const mediaType = requireUsableFile(file)
  if (!ARTWORK_TYPES.includes(mediaType)) {
    refuseField('file', 'unknown-content', 'is not artwork: expected a text format, PDF, PNG, JPEG or a ZIP archive')
  }
  return mediaType
}

/** The last part of a path, without what no file system takes: a browser may send a whole path. */
export function cleanFileName(name: string): string {
  const last = name.split(/[\\/]/).at(-1) ?? ''
  const clean = last
    .normalize('NFC')
    .replaceAll(/[\p{Cc}\p{Cf}\p{Cs}<>:"|?*]/gu, '')
    .trim()
  return clean === '' || /^\.+$/.test(clean) ? 'file' : clean
}
