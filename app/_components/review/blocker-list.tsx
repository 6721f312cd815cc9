import Link from 'next/link'
import { paths } from '@/lib/addresses'
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
          <Link href={paths.target(projectId, revisionId, blocker.target)}>{blocker.sentence}</Link>
        </li>
      ))}
    </ul>
  )
}
