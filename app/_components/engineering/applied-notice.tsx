'use client'

import type { ReactNode } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Notice } from '@/app/_components/ui/notices'
import { useDraft } from './draft'

/** Says that a change was applied to the draft, and takes it back. */
export function AppliedNotice({ onUndone, children }: { onUndone: () => void; children: ReactNode }) {
  const { dispatch } = useDraft()
  return (
    <Notice tone="done" role="status">
      <p>{children}</p>
      <div className="row above">
        <Button
          onPress={() => {
            dispatch({ type: 'undo' })
            onUndone()
          }}
        >
          Undo
        </Button>
      </div>
    </Notice>
  )
}
