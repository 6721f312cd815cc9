'use client'

import { ActionButton } from '@/app/_components/ui/action-button'
import type { Action } from '@/app/_components/ui/action-result'
import type { CompanyView, ProjectFabricatorView } from '@/lib/data'

interface SharingPanelProps {
  revisionId: string
  sharedWith: readonly CompanyView[]
  fabricators: readonly ProjectFabricatorView[]
  mayShare: boolean
  shareAction: Action<null>
  unshareAction: Action<null>
}

/** Which fabricators see this revision. Until it is shared, an invited fabricator does not know that it exists. */
export function SharingPanel({
  revisionId,
  sharedWith,
  fabricators,
  mayShare,
  shareAction,
  unshareAction,
}: SharingPanelProps) {
  const others = fabricators.filter((company) => !sharedWith.some((shared) => shared.id === company.id))
  return (
    <ul className="plain-list">
      {sharedWith.map((company) => (
        <li key={company.id} className="row row-baseline">
          {company.name}
          {mayShare && (
            <ActionButton
              action={unshareAction}
              input={{ revisionId, companyId: company.id }}
              weight="quiet"
              confirm={{
                title: `Stop sharing with ${company.name}?`,
                text: 'They will no longer see this revision. Their comments and declarations stay on record.',
                label: 'Stop sharing',
              }}
            >
              Stop sharing
            </ActionButton>
          )}
        </li>
      ))}
      {sharedWith.length === 0 && <li className="muted">the team only</li>}
      {mayShare &&
        others.map((company) => (
          <li key={company.id}>
            {company.maySeeRevisions ? (
              <ActionButton action={shareAction} input={{ revisionId, companyId: company.id }} pendingLabel="Sharing…">
                Share with {company.name}
              </ActionButton>
            ) : (
              <span className="muted">
                {company.name} {company.state === 'asked' ? 'has not agreed to take part yet' : 'takes no part'}
              </span>
            )}
          </li>
        ))}
    </ul>
  )
}
