'use client'

import isSame from 'fast-deep-equal'
import { useEffect, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notices'
import type { Design } from '@/lib/engine'
import { useDraft } from './draft-context'
import { dropKeptDraft, findKeptDraft } from './kept-draft'

/** Offers edits that were left unsaved in this browser tab, together with the version they were made on. */
export function KeptDraftNotice() {
  const { stored, dispatch, setProposing, isChanged } = useDraft()
  const [kept, setKept] = useState<{ seenVersion: number; design: Design } | null>(null)
  const { revisionId, design, mayEdit, proposing } = stored
  // Only what was kept before this page opened is offered, so this runs once.
  // biome-ignore lint/correctness/useExhaustiveDependencies: later drafts are this page's own.
  useEffect(() => {
    // Changes that came along from another page of the design are these.
    const found = !isChanged && (mayEdit || proposing !== null) ? findKeptDraft(revisionId) : null
    if (found !== null && !isSame(found.design, design)) setKept(found)
  }, [])
  if (kept === null) return null
  return (
    <Notice tone="caution" role="status">
      <p>
        This browser tab holds unsaved changes
        {kept.seenVersion === stored.designVersion
          ? '.'
          : `; they were made on version ${kept.seenVersion}, and the stored version is now ${stored.designVersion}.`}
      </p>
      <div className="row above">
        <Button
          onPress={() => {
            if (!mayEdit) setProposing(true)
            dispatch({ type: 'replace', design: kept.design })
            setKept(null)
          }}
        >
          Restore draft
        </Button>
        <Button
          onPress={() => {
            dropKeptDraft(revisionId)
            setKept(null)
          }}
        >
          Discard draft
        </Button>
      </div>
    </Notice>
  )
}
