import Link from 'next/link'
import { paths, REVISION_TABS, type RevisionTab } from '@/app/_components/shell/paths'
import type { RevisionView } from '@/lib/data'

type Blocker = RevisionView['blockers'][number]

interface BlockerListProps {
  projectId: string
  revisionId: string
  blockers: readonly Blocker[]
}

/** Blocking, each cause with a link to where it can be settled. */
export function BlockerList({ projectId, revisionId, blockers }: BlockerListProps) {
  return (
    <ul className="blockers">
      {blockers.map((blocker) => (
        <li key={`${blocker.code} ${blocker.target.tab} ${blocker.target.id} ${blocker.sentence}`}>
          <Link href={getTargetPath(projectId, revisionId, blocker.target)}>{blocker.sentence}</Link>
        </li>
      ))}
    </ul>
  )
}

/** Address of a tab and, where there is one, of the record on it. Results are shown on the overview. */
export function getTargetPath(
  projectId: string,
  revisionId: string,
  target: { readonly tab: string; readonly id: string | null },
): string {
  const tab: RevisionTab = REVISION_TABS.find((known) => known === target.tab) ?? 'overview'
  const page = paths.revision(projectId, revisionId, tab)
  if (target.id === null || target.id === '') return page
  if (tab === 'checklist') return `${page}#item-${encodeURIComponent(target.id)}`
  if (tab === 'proposals') return paths.proposal(projectId, revisionId, target.id)
  if (tab === 'threads') return `${page}#thread-${encodeURIComponent(target.id)}`
  return `${page}#${encodeURIComponent(target.id)}`
}
