import type { Metadata } from 'next'
import Link from 'next/link'
import { listWaits } from '@/lib/data'
import { getTargetPath } from './_components/review/blocker-list'
import { STAGE_WORDS } from './_components/review/words'
import { paths } from './_components/shell/paths'
import { requireActor } from './_components/shell/require-actor'
import { LinkButton } from './_components/ui/button'
import { EmptyState } from './_components/ui/notices'
import { PageHead } from './_components/ui/section'
import { Timestamp } from './_components/ui/timestamp'

export const metadata: Metadata = { title: 'What waits for me' }

export default async function HomePage() {
  const actor = await requireActor(paths.home())
  const waits = await listWaits(actor)
  return (
    <>
      <PageHead title="What waits for me" under="Oldest first, each with the reason and the next act." />
      {waits.length === 0 ? (
        <EmptyState>
          Nothing waits for you. <Link href={paths.projects()}>Your projects</Link> show where everything stands.
        </EmptyState>
      ) : (
        <ol>
          {waits.map((wait) => (
            <li
              key={`${wait.revisionId} ${wait.target.tab} ${wait.target.id ?? ''} ${wait.reason}`}
              className="wait max-w-none"
            >
              <span className="small muted">
                since <Timestamp at={wait.since} dateOnly />
              </span>
              <div>
                <p>
                  <strong>
                    {wait.projectName}, revision {wait.revisionLabel}
                  </strong>{' '}
                  <span className="muted">{STAGE_WORDS[wait.stage]}</span>
                </p>
                <p>{wait.reason}</p>
              </div>
              <LinkButton href={getTargetPath(wait.projectId, wait.revisionId, wait.target)}>{wait.nextAct}</LinkButton>
            </li>
          ))}
        </ol>
      )}
    </>
  )
}
