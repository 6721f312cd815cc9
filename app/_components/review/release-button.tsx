'use client'

import { ActionButton } from '@/app/_components/ui/action-button'
import { Cautions } from '@/app/_components/ui/cautions'
import { releaseRevision } from './actions'

export function ReleaseButton({ revisionId, version }: { revisionId: string; version: number }) {
  return (
    <div className="stack">
      <Cautions />
      <ActionButton
        action={releaseRevision}
        input={{ revisionId, seenVersion: version }}
        weight="strong"
        confirm={{
          title: 'Release this revision?',
          text: 'The fabricator may build from its package. A released revision no longer changes; it can be superseded or withdrawn.',
          label: 'Release',
        }}
      >
        Release
      </ActionButton>
    </div>
  )
}
