import { Timestamp } from '@/app/_components/ui/timestamp'
import type { FabricationSheetVersionView } from '@/lib/data'

/** Earlier versions of a sheet; all of them stay. */
export function VersionList({ versions }: { versions: readonly FabricationSheetVersionView[] }) {
  if (versions.length < 2) return null
  return (
    <details>
      <summary>All {versions.length} versions</summary>
      <ol className="small" reversed>
        {versions.map(({ version, issuedOn, note, setBy, setAt }) => (
          <li key={version} value={version}>
            issued on {issuedOn}; saved by {setBy.name}, <Timestamp at={setAt} />.{note !== '' && ` ${note}`}
          </li>
        ))}
      </ol>
    </details>
  )
}
