import Link from 'next/link'
import { paths } from '@/app/_components/shell/paths'
import { Notice } from '@/app/_components/ui/notices'
import type { RevisionView } from '@/lib/data'
import { countOf } from './words'

/** By which version of the workspace's catalogue the review goes, what that leaves out, and whether there is a newer one. */
export function TemplateNotice({ revision }: { revision: RevisionView }) {
  const { version, latestVersion, switchedOff } = revision.template
  const isOpen = !['released', 'superseded', 'withdrawn'].includes(revision.stage)
  const isOffered = isOpen && version < latestVersion && revision.may.viewTrail
  if (!isOffered && switchedOff.length === 0) return null
  return (
    <div className="stack">
      {isOffered && (
        <Notice>
          <p>
            This review uses {version === 0 ? 'the catalogue as delivered' : `version ${version} of the catalogue`}, and
            the workspace’s is now version {latestVersion}.{' '}
            <Link href={paths.catalogueUpdate(revision.project.id, revision.id)}>See what it would change</Link>
          </p>
        </Notice>
      )}
      {switchedOff.length > 0 && (
        <details>
          <summary className="small">{countOf(switchedOff.length, 'item')} switched off by the workspace</summary>
          <ul className="plain-list small">
            {switchedOff.map(({ itemId, question, reason }) => (
              <li key={itemId}>
                {question} <span className="muted">{reason}</span>
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}
