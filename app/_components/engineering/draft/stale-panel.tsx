'use client'

import { useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { SheetDialog } from '@/app/_components/ui/dialog'
import { StaleNotice } from '@/app/_components/ui/notices'
import { compareDesigns } from '@/lib/review'
import { useDraft } from './draft-context'
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
  const settle = (mode: 'keep' | 'take') => {
    dispatch({ type: 'rebase', stored: stored.design, version: stored.designVersion, mode })
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
            <Button onPress={() => settle('take')} isDisabled={!hasNewer}>
              Load the stored design
            </Button>
          </>
        }
      >
        {state.refusal.message} Your changes are still here and nothing of them was stored.
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
          <div className="table-frame compare-frame">
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
          </div>
        )}
        <p className="small muted">
          Keeping mine puts every field as this page shows it, also those that changed meanwhile, when it is saved.
        </p>
        <div className="row">
          <Button weight="strong" onPress={() => settle('take')}>
            Load the stored design
          </Button>
          <Button onPress={() => settle('keep')}>Keep mine, to be saved over it</Button>
          <Button onPress={() => setComparing(false)}>Not yet</Button>
        </div>
      </SheetDialog>
    </>
  )
}
