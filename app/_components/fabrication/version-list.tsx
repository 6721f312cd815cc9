import Link from 'next/link'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { FabricationSheetVersionView } from '@/lib/data'

interface VersionListProps {
  readonly versions: readonly FabricationSheetVersionView[]
  /** Where a version is opened; null where the person may not, or the sheet is no list of rows. */
  readonly hrefOf: ((version: number) => string) | null
}

/** Earlier versions of a sheet; all of them stay. */
export function VersionList({ versions, hrefOf }: VersionListProps) {
  if (versions.length < 2) return null
  return (
    <details>
      <summary>All {versions.length} versions</summary>
      <ol className="small" reversed>
        {versions.map(({ version, issuedOn, note, setBy, setAt }) => (
          <li key={version} value={version}>
            issued on {issuedOn}; saved by {setBy.name}, <Timestamp at={setAt} />.{note !== '' && ` ${note}`}{' '}
            {hrefOf !== null && <Link href={hrefOf(version)}>Open version {version}</Link>}
          </li>
        ))}
      </ol>
    </details>
  )
}
