'use client'

import { useRef, useState, useTransition } from 'react'
import { isDoorText } from '@/lib/inputs'
import type { Action, ShownRefusal } from './action-result'
import { makeRequestKey } from './request-key'

export interface Sending<T> {
  send: (
    input: Record<string, unknown>,
    onDone?: (value: T) => void,
    onRefused?: (refusal: ShownRefusal) => ShownRefusal,
  ) => void
  isPending: boolean
  refusal: ShownRefusal | null
  clearRefusal: () => void
}

/**
 * Sends one act to the server. While an answer is awaited nothing is sent twice; a retry after a lost answer carries
 * the same request key, so that the server does it once. After success the server's answer brings the page as it now is.
 */
export function useAction<T>(action: Action<T>): Sending<T> {
  const [isPending, startTransition] = useTransition()
  const [refusal, setRefusal] = useState<ShownRefusal | null>(null)
  const requestKey = useRef<string | null>(null)
  const isSending = useRef(false)

  const send: Sending<T>['send'] = (input, onDone, onRefused) => {
    if (isSending.current) return
    isSending.current = true
    requestKey.current ??= makeRequestKey()
    const sent = { ...input, requestKey: requestKey.current }
    setRefusal(null)
    startTransition(async () => {
      try {
        const result = await action(sent)
        // The server has answered: whatever is sent next is a new request.
        requestKey.current = null
        if (result.ok) {
          onDone?.(result.value)
        } else {
          setRefusal(onRefused === undefined ? result.refusal : onRefused(result.refusal))
        }
      } catch (error) {
        const isTurnedAway = error instanceof Error && isDoorText(error.message)
        // The key is kept: trying again after a lost answer must not do it twice.
        setRefusal({
          kind: 'unsent',
          message: isTurnedAway
            ? error.message
            : 'The server did not answer. What you entered is still here; try again.',
          issues: [],
        })
      } finally {
        isSending.current = false
      }
    })
  }

  return { send, isPending, refusal, clearRefusal: () => setRefusal(null) }
}
