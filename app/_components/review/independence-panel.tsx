import Link from 'next/link'
import { paths } from '@/lib/addresses'
import type { RevisionView } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { describeAuthor } from '@/lib/review'
import { FollowPolicy } from './follow-policy'
import { PolicyRows } from './policy-rows'

/** Who made the content, and the policy by which it is reviewed and approved. */
export function IndependencePanel({ revision }: { revision: RevisionView }) {
  const { authors, policy, loosenedUses, toFollow, mayFollow } = revision.signOff
  return (
    <div className="stack">
      <p>
        Authors of design and artwork:{' '}
        {authors.length === 0
          ? 'none on record'
          : authors
              .map((author) =>
                author.changes === null
                  ? describeAuthor(author)
                  : `${describeAuthor(author)}, ${countOf(author.changes.count, 'change')} up to version ${author.changes.lastVersion}`,
              )
              .join('; ')}
      </p>
      {loosenedUses.length > 0 && (
        <div>
          <p>
            <strong>A sign-off policy looser than usual was used:</strong>
          </p>
          <ul className="changes">
            {loosenedUses.map((use) => (
              <li key={use}>{use}</li>
            ))}
          </ul>
        </div>
      )}
      {policy === null ? (
        <p>The review began before there were sign-off policies.</p>
      ) : (
        <details>
          <summary>
            {policy.version === 0 ? 'The usual sign-off policy' : `Version ${policy.version} of the sign-off policy`}
            {policy.rows.some(({ isLoosened }) => isLoosened) && ', looser than usual'}
          </summary>
          <PolicyRows rows={policy.rows} />
          <p className="small">
            <Link href={paths.signOffPolicy(revision.project.id)}>Sign-off policy of the project</Link>
          </p>
        </details>
      )}
      {toFollow !== null && (
        <FollowPolicy
          key={`${revision.version} ${toFollow.version}`}
          revisionId={revision.id}
          version={revision.version}
          toFollow={toFollow}
          mayFollow={mayFollow}
        />
      )}
    </div>
  )
}
