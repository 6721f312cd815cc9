import Link from 'next/link'
import { paths } from '@/lib/addresses'
import type { SearchHit, SearchKind, SearchView } from '@/lib/data'
import { EmptyState } from '../ui/notices'
import { PageSection } from '../ui/section'

const TITLES: Readonly<Record<SearchKind, string>> = {
  project: 'Projects',
  thread: 'Threads and comments',
  item: 'Items and answers',
}

/** What was found, by kind; each entry leads to its place. */
export function SearchResults({ result, text }: { result: SearchView; text: string }) {
  if (result.hits.length === 0) return <EmptyState>Nothing that you may see holds all words of “{text}”.</EmptyState>
  return (['project', 'thread', 'item'] as const)
    .filter((kind) => result.counts[kind] > 0)
    .map((kind) => {
      const hits = result.hits.filter((hit) => hit.kind === kind)
      const more = result.counts[kind] - hits.length
      const isAtLeast = result.atLeast.includes(kind)
      const count = isAtLeast ? `${result.counts[kind]} or more` : `${result.counts[kind]}`
      return (
        <PageSection key={kind} title={`${TITLES[kind]} (${count})`}>
          <ul className="plain-list">
            {hits.map((hit) => (
              <li key={`${hit.revisionId ?? hit.projectId} ${hit.target.id ?? ''}`}>
                <Link href={findHref(hit)}>{hit.title}</Link>{' '}
                {hit.revisionLabel !== null && (
                  <span className="muted">
                    {hit.projectName}, revision {hit.revisionLabel}
                  </span>
                )}
                {hit.excerpt !== '' && <p className="small muted">{hit.excerpt}</p>}
              </li>
            ))}
          </ul>
          {(more > 0 || isAtLeast) && (
            <p className="muted">
              {isAtLeast ? 'These are the newest' : `${more} more`}; add a word to narrow it down.
            </p>
          )}
        </PageSection>
      )
    })
}

function findHref({ projectId, revisionId, target }: SearchHit): string {
  return revisionId === null ? paths.project(projectId) : paths.target(projectId, revisionId, target)
}
