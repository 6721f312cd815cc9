'use client'

import { ReasonForm } from '@/app/_components/ui/reason-form'
import { withdrawLibraryEntryInput } from '@/lib/inputs'
import { withdrawLibraryEntry } from '../actions'

interface WithdrawFormProps {
  readonly entryId: string
  readonly version: number
  readonly onClose: () => void
}

/** Designs keep what they took; it is offered no longer. */
export function WithdrawForm({ entryId, version, onClose }: WithdrawFormProps) {
  return (
    <ReasonForm
      schema={withdrawLibraryEntryInput}
      action={withdrawLibraryEntry}
      values={{ entryId, seenVersion: version }}
      asks="Why it is withdrawn; designs keep their copies"
      label="Withdraw"
      pendingLabel="Withdrawing…"
      onClose={onClose}
    />
  )
}
