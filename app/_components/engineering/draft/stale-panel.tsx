'use client'

import { useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { SideDialog } from '@/app/_components/ui/dialog'
import { StaleNotice } from '@/app/_components/ui/notices'
import type { Design } from '@/lib/engine'
import { compareDesigns, type DesignChange } from '@/lib/review'
import { nameClash } from './clash-words'
import { useDraft } from './draft-context'
import { mergeDrafts } from './merge-drafts'
import type { SaveState } from './use-save'

interface StalePanelProps {
  readonly state: Extract<SaveState, { kind: 'stale' }>
  readonly onSettled: () => void
}

/** Somebody else saved first. Says who and what, keeps the draft, and lets the person compare before choosing. */
export function StalePanel({ state, onSettled }: StalePanelProps) {
  const { state: draft, stored, dispatch } = useDraft()
  const [isComparing, setComparing] = useState(false)
  const hasNewer = stored.designVersion > draft.seenVersion
  const [meanwhile, mine] = useMemo(
    () => [compareDesigns(draft.stored, stored.design), compareDesigns(draft.stored, draft.design)],
    [draft.stored, stored.design, draft.design],
  )
  const { merged, clashes } = useMemo(
    () => mergeDrafts(draft.stored, draft.design, stored.design),
    [draft.stored, draft.design, stored.design],
  )
  const settle = (design: Design) => {
    dispatch({ type: 'rebase', stored: stored.design, version: stored.designVersion, design })
    setComparing(false)
    onSettled()
  }
  return (
    <>
      <StaleNotice
        action={
          <>
            <Button onPress={() => setComparing(true)} isDisabled={!hasNewer}>
              Compare with mine
            </Button>
            <Button onPress={() => settle(stored.design)} isDisabled={!hasNewer}>
              Load the stored design
            </Button>
          </>
        }
      >
        {state.refusal.message} Your changes are still here.
        {state.refusal.changes.map((change) => (
          <span key={`${change.at} ${change.by}`} className="stale-change">
            {change.by}, {change.at.slice(0, 16).replace('T', ' ')} UTC: {change.what.join('; ')}
          </span>
        ))}
      </StaleNotice>
      <SideDialog title="Stored design and your draft" isOpen={isComparing} onOpenChange={setComparing}>
        <h3>Changed meanwhile, stored as version {stored.designVersion}</h3>
        <ChangeList changes={meanwhile} />
        <h3>Changed in your draft</h3>
        <ChangeList changes={mine} />
        <p className="small">
          Merging keeps every change that only one of you made.{' '}
          {clashes.length === 0
            ? 'You did not change the same fields.'
            : `Where both of you changed the same field, your value is kept: ${clashes.map((clash) => nameClash(clash, [draft.design, stored.design])).join('; ')}.`}
        </p>
        <div className="row">
          <Button weight="strong" onPress={() => settle(merged)}>
            Merge both
          </Button>
          <Button onPress={() => settle(stored.design)}>Load the stored design</Button>
          <Button onPress={() => settle(draft.design)}>Overwrite with mine</Button>
          <Button onPress={() => setComparing(false)}>Cancel</Button>
        </div>
      </SideDialog>
    </>
  )
}

function ChangeList({ changes }: { changes: readonly DesignChange[] }) {
  if (changes.length === 0) return <p className="empty">Nothing.</p>
  return (
    <ul className="changes">
      {changes.map(({ path, sentence }) => (
        <li key={path.join('/')}>{sentence}</li>
      ))}
    </ul>
  )
}
