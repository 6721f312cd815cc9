import Link from 'next/link'
import { Notice } from '@/app/_components/ui/notices'
import { paths } from '@/lib/addresses'
import type { RevisionView } from '@/lib/data'
import { countOf } from '@/lib/engine/units'

/** By which version of the workspace's catalogue and which profiles the review goes, what they leave out, and whether either has moved on. */
export function TemplateNotice({ revision }: { revision: RevisionView }) {
  const { version, latestVersion, switchedOff, isBehind } = revision.template
  const isOpen = !['released', 'superseded', 'withdrawn'].includes(revision.stage)
  const isOffered = isOpen && isBehind && revision.may.viewTrail
  const hasProfiles = revision.template.profiles.length > 0
  if (!isOffered && switchedOff.length === 0 && !hasProfiles) return null
  return (
    <div className="stack">
      {isOffered && (
        <Notice>
          <p>
            {version === latestVersion
              ? 'The project now follows other profiles than this review.'
              : `This review uses ${version === 0 ? 'the catalogue as delivered' : `version ${version} of the catalogue`}, and the workspace’s is now version ${latestVersion}.`}{' '}
            <Link href={paths.catalogueUpdate(revision.project.id, revision.id)}>See what it would change</Link>
          </p>
        </Notice>
      )}
      {hasProfiles && <ProfileLine revision={revision} />}
      {switchedOff.length > 0 && (
        <details>
          <summary className="small">
            {countOf(switchedOff.length, 'item')} switched off by workspace or profiles
          </summary>
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

/** The profiles that the review follows, by name. */
export function ProfileLine({ revision }: { revision: RevisionView }) {
  const names = revision.template.profiles.map(({ name }) => name)
  if (names.length === 0) return <p className="small muted">This review follows no profile.</p>
  return (
    <p className="small">
      Profiles: {names.join(', ')}
      {names.length > 1 && <span className="muted"> (the strictest holds)</span>}
    </p>
  )
}
