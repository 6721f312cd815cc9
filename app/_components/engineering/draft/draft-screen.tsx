'use client'

import type { ReactNode } from 'react'
import { DraftProvider } from './draft-context'
import { SaveBar } from './save-bar'
import type { StoredRevision } from './stored-revision'
import type { SaveDesignAction } from './use-save'

export interface DraftScreenProps {
  readonly stored: StoredRevision
  readonly saveAction: SaveDesignAction
}

/** A screen on which the design of a revision is edited: one draft for all that stands on it, and the bar that saves or proposes it. */
export function DraftScreen({ stored, saveAction, children }: DraftScreenProps & { readonly children: ReactNode }) {
  return (
    <DraftProvider stored={stored}>
      <SaveBar action={saveAction} />
      {children}
    </DraftProvider>
  )
}
