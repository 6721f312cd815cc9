'use client'

import { useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { SheetDialog } from '@/app/_components/ui/dialog'
import { StaleNotice } from '@/app/_components/ui/notices'
import { TableFrame } from '@/app/_components/ui/table-frame'
import type { Design } from '@/lib/engine'
import { compareDesigns } from '@/lib/review'
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
  const differences = useMemo(
    () => (isComparing ? compareDesigns(stored.design, draft.design) : []),
    [isComparing, stored.design, draft.design],
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
        {state.refusal.message} Your changes are still on this page.
        {state.refusal.changes.map((change) => (
          <span key={`${change.at} ${change.by}`} className="stale-change">
            {change.by}, {change.at.slice(0, 16).replace('T', ' ')} UTC: {change.what.join('; ')}
          </span>
        ))}
      </StaleNotice>
      <SheetDialog title="The stored design and mine" isOpen={isComparing} onOpenChange={setComparing}>
        {differences.length === 0 ? (
          <p>Both are alike.</p>
        ) : (
          <TableFrame label="Differences" className="compare-frame">
            <table className="ledger unit-heads">
              <caption className="small muted">Version {stored.designVersion} as stored, and this page</caption>
              <thead>
                <tr>
                  <th scope="col">Where</th>
                  <th scope="col">Stored</th>
                  <th scope="col">Mine</th>
                </tr>
              </thead>
              <tbody>
                {differences.map((difference) => (
                  <tr key={difference.path.join('/')}>
                    <th scope="row">{difference.path.join(' › ')}</th>
                    <td>{difference.before ?? '–'}</td>
                    <td>{difference.after ?? '–'}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </TableFrame>
        )}
        <p className="small">
          Both together takes what only one of you changed from whoever changed it.{' '}
          {clashes.length === 0
            ? 'You changed no field that changed meanwhile.'
            : `Where both changed the same, mine stands: ${clashes.join('; ')}.`}
        </p>
        <div className="row">
          <Button weight="strong" onPress={() => settle(merged)}>
            Both together
          </Button>
          <Button onPress={() => settle(stored.design)}>Load the stored design</Button>
          <Button onPress={() => settle(draft.design)}>Only mine, over the stored</Button>
          <Button onPress={() => setComparing(false)}>Not yet</Button>
        </div>
      </SheetDialog>
    </>
  )
}
