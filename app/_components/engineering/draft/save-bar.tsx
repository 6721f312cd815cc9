'use client'

import { useRouter } from 'next/navigation'
import { useCallback, useEffect, useState } from 'react'
import type { ShownRefusal } from '@/app/_components/ui/action-result'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notices'
import { formatIssuePath } from '@/lib/engine'
import { AssumedNotice } from './assumed-notice'
import { useDraft } from './draft-context'
import { type DraftState, listChangedParts } from './draft-state'
import { dropKeptDraft } from './kept-draft'
import { KeptDraftNotice } from './kept-draft-notice'
import { LeaveGuard } from './leave-guard'
import { ProposeDialog } from './propose-dialog'
import { StalePanel } from './stale-panel'
import { type SaveDesignAction, useSave } from './use-save'

/** Issues shown before the rest is only counted. */
const MAX_ISSUES_SHOWN = 12

type StaleRefusal = Extract<ShownRefusal, { kind: 'stale' }>

/** State of the draft and the acts on it; stays in view while the page scrolls. */
export function SaveBar({ action }: { action: SaveDesignAction }) {
  const { state, dispatch, live, stored, isChanged, isReadOnly, setProposing, problemCount: problems } = useDraft()
  const [isAsking, setAsking] = useState(false)
  const { state: saveState, save, clear } = useSave(action)
  const isSaving = saveState.kind === 'saving'
  const router = useRouter()
  const [stale, setStale] = useState<StaleRefusal | null>(null)
  const meetStale = useCallback(
    (refusal: StaleRefusal) => {
      setAsking(false)
      setStale(refusal)
      router.refresh()
    },
    [router],
  )

  useEffect(() => {
    if (isReadOnly) return
    const onKeyDown = (event: KeyboardEvent) => {
      if (!(event.ctrlKey || event.metaKey) || event.altKey || event.defaultPrevented) return
      const key = event.key.toLowerCase()
      if (key === 's') {
        event.preventDefault()
        if (stored.mayEdit) void save()
        else setAsking(true)
      } else if (key === 'z' || key === 'y') {
        event.preventDefault()
        dispatch({ type: key === 'y' || event.shiftKey ? 'redo' : 'undo' })
      }
    }
    document.addEventListener('keydown', onKeyDown)
    return () => document.removeEventListener('keydown', onKeyDown)
  }, [dispatch, isReadOnly, save, stored.mayEdit])

  if (isReadOnly) {
    return (
      <>
        <Notice>
          <p>{stored.lockedBecause}</p>
          {stored.proposing !== null && (
            <div className="row above no-print">
              <Button onPress={() => setProposing(true)}>Propose a change</Button>
              <span className="small muted">Your edits stay in this browser tab until you propose them.</span>
            </div>
          )}
        </Notice>
        <KeptDraftNotice />
      </>
    )
  }
  const unread = Object.values(state.misread)
  return (
    <div className="save-bar no-print">
      <div className="row">
        {stored.mayEdit && (
          <Button weight="strong" onPress={() => void save()} isPending={isSaving} pendingLabel="Saving…">
            Save
          </Button>
        )}
        {stored.proposing !== null && (
          <Button
            weight={stored.mayEdit ? 'plain' : 'strong'}
            onPress={() => setAsking(true)}
            isDisabled={!isChanged || problems > 0 || isSaving}
          >
            {stored.mayEdit ? 'Propose instead' : 'Propose these changes'}
          </Button>
        )}
        <Button onPress={() => dispatch({ type: 'undo' })} isDisabled={state.past.length === 0 || isSaving}>
          Undo
        </Button>
        <Button onPress={() => dispatch({ type: 'redo' })} isDisabled={state.future.length === 0 || isSaving}>
          Redo
        </Button>
        {!stored.mayEdit && (
          <Button
            onPress={() => {
              dispatch({ type: 'replace', design: state.stored })
              dropKeptDraft(stored.revisionId)
              setProposing(false)
            }}
          >
            Discard edits
          </Button>
        )}
        <span role="status" className="small save-state">
          {stored.mayEdit ? describeState(isSaving, isChanged, state) : describeProposal(isChanged, state)}
          {problems > 0 && `; ${problems} ${problems === 1 ? 'entry needs' : 'entries need'} correction`}
        </span>
      </div>
      {problems > 0 && (
        <p className="small">Results and verdicts on this page are from the last valid state, before these entries.</p>
      )}
      {problems > 0 && (
        <details className="small save-issues">
          <summary>Errors to fix</summary>
          <ul>
            {unread.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
            {live.issues.slice(0, MAX_ISSUES_SHOWN).map((issue) => (
              <li key={`${formatIssuePath(issue.path)} ${issue.message}`}>
                <code>{formatIssuePath(issue.path)}</code> {issue.message}
              </li>
            ))}
            {live.issues.length > MAX_ISSUES_SHOWN && <li>and {live.issues.length - MAX_ISSUES_SHOWN} more</li>}
          </ul>
        </details>
      )}
      {saveState.kind === 'refused' && (
        <Notice tone="refused" role="alert">
          <p>{saveState.message}</p>
          {saveState.details.length > 0 && (
            <ul>
              {saveState.details.slice(0, MAX_ISSUES_SHOWN).map((detail) => (
                <li key={detail}>{detail}</li>
              ))}
            </ul>
          )}
        </Notice>
      )}
      {saveState.kind === 'saved' && saveState.voidedSignatures > 0 && (
        <Notice tone="caution" role="status">
          <p>
            Saved. This voided {saveState.voidedSignatures}{' '}
            {saveState.voidedSignatures === 1 ? 'signature' : 'signatures'}: the content signed is no longer this one.
          </p>
        </Notice>
      )}
      {saveState.kind === 'stale' && <StalePanel state={saveState} onSettled={clear} />}
      <AssumedNotice />
      <KeptDraftNotice />
      {isAsking && stored.proposing !== null && (
        <ProposeDialog proposing={stored.proposing} onClose={() => setAsking(false)} onStale={meetStale} />
      )}
      {stale !== null && <StalePanel state={{ kind: 'stale', refusal: stale }} onSettled={() => setStale(null)} />}
      <LeaveGuard save={stored.mayEdit ? save : null} />
    </div>
  )
}

function describeProposal(isChanged: boolean, draft: DraftState): string {
  return isChanged ? `${describeChange(draft)}, not proposed yet` : `As stored, version ${draft.seenVersion}`
}

function describeState(isSaving: boolean, isChanged: boolean, draft: DraftState): string {
  if (isSaving) return 'Saving'
  return isChanged ? `${describeChange(draft)}, not saved` : `Saved, version ${draft.seenVersion}`
}

/** One save stores what was changed on all pages of the design: which parts these are is said on each. */
function describeChange(draft: DraftState): string {
  const parts = listChangedParts(draft)
  return `Changed since version ${draft.seenVersion}${parts.length === 0 ? '' : ` (${parts.join(', ')})`}`
}
