'use client'

import { useRouter } from 'next/navigation'
import { useCallback, useRef, useState } from 'react'
import { type Action, getIssues, type ShownRefusal } from '@/app/_components/ui/action-result'
import { makeRequestKey } from '@/app/_components/ui/request-key'
import { type Design, formatIssuePath, parseDesign } from '@/lib/engine'
import { isDoorText } from '@/lib/inputs'
import { useDraft } from './draft-context'
import { dropKeptDraft } from './kept-draft'

export type SaveDesignAction = Action<{ version: number; designVersion: number; voidedSignatures: number }>

export type SaveState =
  | { readonly kind: 'idle' }
  | { readonly kind: 'saving' }
  | { readonly kind: 'saved'; readonly voidedSignatures: number }
  | { readonly kind: 'refused'; readonly message: string; readonly details: readonly string[] }
  | { readonly kind: 'stale'; readonly refusal: Extract<ShownRefusal, { kind: 'stale' }> }

interface Save {
  readonly state: SaveState
  /** Resolves to whether everything is stored. */
  readonly save: () => Promise<boolean>
  readonly clear: () => void
}

/**
 * Sends the draft once: while a save is under way further calls do nothing, and a retry of the same content carries
 * the same request key, so that the server does it once too.
 */
export function useSave(action: SaveDesignAction): Save {
  const { read, dispatch, stored } = useDraft()
  const router = useRouter()
  const [state, setState] = useState<SaveState>({ kind: 'idle' })
  const isSaving = useRef(false)
  const request = useRef<{ design: Design; seenVersion: number; key: string } | null>(null)

  const save = useCallback(async () => {
    if (isSaving.current) return false
    // As it is now: the screen may not have come to the last key yet.
    const draft = read()
    const unread = Object.values(draft.misread)
    if (unread.length > 0) {
      setState({ kind: 'refused', message: 'Some fields cannot be read.', details: unread })
      return false
    }
    const parsed = parseDesign(draft.design)
    if (!parsed.ok) {
      const details = parsed.issues.map((issue) => `${formatIssuePath(issue.path)}: ${issue.message}`)
      setState({ kind: 'refused', message: 'The design cannot be stored in this state.', details })
      return false
    }
    isSaving.current = true
    setState({ kind: 'saving' })
    const last = request.current
    const isRetry = last !== null && last.design === draft.design && last.seenVersion === draft.seenVersion
    const key = isRetry ? last.key : makeRequestKey()
    request.current = { design: draft.design, seenVersion: draft.seenVersion, key }
    try {
      const result = await action({
        revisionId: stored.revisionId,
        seenVersion: draft.seenVersion,
        design: parsed.value,
        requestKey: key,
      })
      if (result.ok) {
        dispatch({ type: 'saved', design: draft.design, version: result.value.designVersion })
        dropKeptDraft(stored.revisionId)
        request.current = null
        setState({ kind: 'saved', voidedSignatures: result.value.voidedSignatures })
        router.refresh()
        return true
      }
      const { refusal } = result
      if (refusal.kind === 'stale') {
        setState({ kind: 'stale', refusal })
        // Brings the stored design in, so that it can be compared; the draft stays as it is.
        router.refresh()
        return false
      }
      const details = listDetails(refusal)
      setState({ kind: 'refused', message: refusal.message, details })
      return false
    } catch (error) {
      const isTurnedAway = error instanceof Error && isDoorText(error.message)
      setState({
        kind: 'refused',
        message: isTurnedAway ? error.message : 'The server did not answer. Your changes are still here: save again.',
        details: [],
      })
      return false
    } finally {
      isSaving.current = false
    }
  }, [action, dispatch, read, router, stored.revisionId])

  return { state, save, clear: useCallback(() => setState({ kind: 'idle' }), []) }
}

function listDetails(refusal: ShownRefusal): string[] {
  if (refusal.kind === 'blocked') return refusal.blockers.map((blocker) => blocker.sentence)
  if (refusal.kind === 'unexpected') {
    return [`Reference for the administrator of this installation: ${refusal.errorId}`]
  }
  return getIssues(refusal).map((issue) => `${formatIssuePath(issue.path)}: ${issue.message}`)
}
