import Link from 'next/link'
import { PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { DRAWING_GAP_WORDS, type DrawingGap } from '@/lib/review'

interface DrawingGapsProps {
  projectId: string
  revisionId: string
  gaps: readonly DrawingGap[]
}

/** What a fabricator would still ask, each question with a link to where it is answered. */
export function DrawingGaps({ projectId, revisionId, gaps }: DrawingGapsProps) {
  const groups = Object.entries(DRAWING_GAP_WORDS).map(([severity, words]) => ({
    severity,
    words,
    gaps: gaps.filter((gap) => gap.severity === severity),
  }))
  return (
    <PageSection title="What a fabricator would still ask">
      {gaps.length === 0 ? (
        <p>None of the fields checked here is empty.</p>
      ) : (
        groups
          .filter((group) => group.gaps.length > 0)
          .map((group) => (
            <div key={group.severity} className="stack">
              <h3 className="label">
                {group.words} ({group.gaps.length})
              </h3>
              <ul className="blockers">
                {group.gaps.map((gap) => (
                  <li key={gap.path.join('/')}>
                    <Link href={paths.target(projectId, revisionId, gap.target)}>{gap.question}</Link>
                  </li>
                ))}
              </ul>
            </div>
          ))
      )}
      <p className="muted small">
        Found by checking for fields that are empty in the design and not drawn in plan. Whether what is stated is
        right, whether the artwork agrees with it, and what a contract or a standard asks for besides, is not checked
        here. Common practice, no published source; a fabricator may ask more.
      </p>
    </PageSection>
  )
}
