import type { Result } from '@/lib/engine'
import { readArchive, writeArchive } from './archive'
import type { PackageFile } from './content'
import { markPdf } from './mark-pdf'
import type { PackageStatus, StatusList } from './status-list'

/**
 * What is handed out of an obsolete package: its documents, marked on every page, the status list that says so, and the
 * package itself, which stays as it was signed.
 */
export function makeMarkedCopy(original: Uint8Array, status: PackageStatus, list: StatusList): Result<Uint8Array> {
  const read = readArchive(original)
  if (!read.ok) return read
  const encode = (text: string) => new TextEncoder().encode(text)
  const lines = [status.sentence, `Status of ${list.issuedAt.slice(0, 19).replace('T', ' ')} UTC`]
  const documents = read.value
    .filter(({ path }) => path.endsWith('.pdf'))
    .map(
      ({ path, bytes }): PackageFile => ({ path: `OBSOLETE-${path.split('/').at(-1)}`, bytes: markPdf(bytes, lines) }),
    )
  const notice = [
    ...lines,
    '',
    'OBSOLETE-*.pdf        the documents, marked on every page',
    'status.json           the signed status list: npm run package:verify -- original-package.zip --status status.json',
    'original-package.zip  the package as it was signed, for the record',
    '',
  ]
  return {
    ok: true,
    value: writeArchive([
      { path: 'OBSOLETE.txt', bytes: encode(notice.join('\n')) },
      ...documents,
      { path: 'status.json', bytes: encode(`${JSON.stringify(list, null, 2)}\n`) },
      { path: 'original-package.zip', bytes: original },
    ]),
  }
}
