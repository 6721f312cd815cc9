import { gunzipSync } from 'node:zlib'
import { unzipSync } from 'fflate'
import { parseTar } from 'nanotar'
import type { Issue, Result } from '@/lib/engine'
import { MAX_PACKAGE_BYTES, MAX_PACKAGE_FILES } from './archive'
import { MANIFEST_PATH, type PackageFile } from './content'
import { checkTarLayout } from './tar-layout'
import { Unreadable } from './unreadable'
import { checkUnpacked, checkZipLayout } from './zip-layout'

/**
 * Reads the files of an archive as any program would unpack it: ZIP, TAR, TAR.GZ, compressed or not, in any order, and
 * in a folder of its own, where all programs unpack the same files. How it is packed is not judged: `readArchive` does that.
 */
export function readAnyArchive(bytes: Uint8Array): Result<PackageFile[]> {
  try {
    return { ok: true, value: toPackageFiles(unpack(bytes)) }
  } catch (error) {
    const known = error instanceof Unreadable ? error : null
    const issue: Issue = {
      code: known?.code ?? 'unreadable',
      path: known?.file === null || known === null ? [] : [known.file],
      message:
        known?.message ?? `the archive cannot be unpacked: ${error instanceof Error ? error.message : String(error)}`,
    }
    return { ok: false, issues: [issue] }
  }
}

/**
 * Files as a package has them, from files as somebody unpacked or packed them: a folder that all lie in is taken off.
 * Names that a package cannot hold stay as they are; they are told as files that do not belong to it.
 */
export function toPackageFiles(files: readonly PackageFile[]): PackageFile[] {
  const manifest = files
    .filter(({ path }) => path === MANIFEST_PATH || path.endsWith(`/${MANIFEST_PATH}`))
    .sort((a, b) => a.path.length - b.path.length)[0]
  const folder = manifest?.path.slice(0, -MANIFEST_PATH.length) ?? ''
  return files.map((file) => (file.path.startsWith(folder) ? { ...file, path: file.path.slice(folder.length) } : file))
}

const startsWith = (bytes: Uint8Array, ...signs: number[]) => signs.every((sign, at) => bytes[at] === sign)

function unpack(bytes: Uint8Array): PackageFile[] {
  if (startsWith(bytes, 0x50, 0x4b)) return unzip(bytes)
  if (startsWith(bytes, 0x1f, 0x8b)) return untar(gunzipSync(bytes, { maxOutputLength: MAX_PACKAGE_BYTES }))
  // TAR has no sign at its beginning; POSIX.1-2017, pax, "ustar Interchange Format": the magic stands at byte 257.
  if (new TextDecoder('latin1').decode(bytes.subarray(257, 262)) === 'ustar') return untar(bytes)
  throw new Unreadable(
    'not-an-archive',
    null,
    'the file is neither a ZIP nor a TAR archive; unpack it, and check the folder',
  )
}

function unzip(bytes: Uint8Array): PackageFile[] {
  const listed = new Map(checkZipLayout(bytes).map((entry) => [entry.name, entry]))
  const names = new Set<string>()
  let total = 0
  const entries = unzipSync(bytes, {
    filter: ({ name, originalSize }) => {
      total += originalSize
      if (names.has(name)) throw new Unreadable('duplicate', name, `${name} is in the archive twice`)
      names.add(name)
      requireSize(total, names.size)
      return !name.endsWith('/')
    },
  })
  return Object.entries(entries).map(([path, content]) => {
    const entry = listed.get(path)
    if (entry !== undefined) checkUnpacked(entry, content)
    return { path, bytes: content }
  })
}

function untar(bytes: Uint8Array): PackageFile[] {
  checkTarLayout(bytes)
  // The reader looks at the whole memory that a view lies in.
  const entries = parseTar(Uint8Array.from(bytes))
  const files: PackageFile[] = []
  const names = new Set<string>()
  for (const { name, type, data } of entries) {
    const path = name.replace(/^(\.\/)+/, '')
    if (type === 'directory') continue
    if (names.has(path)) throw new Unreadable('duplicate', path, `${path} is in the archive twice`)
    names.add(path)
    if (type !== 'file') throw new Unreadable('not-a-file', path, `${path} is a link or a device, not a file`)
    files.push({ path, bytes: data ?? new Uint8Array() })
  }
  requireSize(bytes.length, names.size)
  return files
}

/** Asked before anything is unpacked: a small archive can hold a very large nothing. */
export function requireSize(sizeBytes: number, fileCount: number): void {
  if (sizeBytes > MAX_PACKAGE_BYTES) {
    throw new Unreadable(
      'too-large',
      null,
      `unpacked it has more than ${MAX_PACKAGE_BYTES} bytes, the most of a package`,
    )
  }
  if (fileCount > MAX_PACKAGE_FILES) {
    throw new Unreadable('too-many-files', null, `it holds more than ${MAX_PACKAGE_FILES} files, the most of a package`)
  }
}
