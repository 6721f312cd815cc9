'use client'

import { lazy, Suspense, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import type { Bend } from '@/lib/engine'
import { useDraft } from '../draft'

/** Fetched when somebody asks for remedies: most visits to a bend do not. */
const RemedyWorkbench = lazy(async () => ({ default: (await import('./remedy-workbench')).RemedyWorkbench }))

/**
 * Changes that the trade would try on this bend. They are sought on demand, since some hundred sections are computed;
 * typing in the fields above never waits for it.
 */
export function RemedyPanel({ bend }: { bend: Bend }) {
  const { live } = useDraft()
  const [isOpen, setIsOpen] = useState(false)
  if (isOpen) {
    return (
      <Suspense fallback={<p className="empty">Loading…</p>}>
        <RemedyWorkbench bend={bend} />
      </Suspense>
    )
  }
  const hasIssues = live.issues.length > 0
  return (
    <div className="row">
      <Button onPress={() => setIsOpen(true)} isDisabled={hasIssues}>
        Find remedies
      </Button>
      {hasIssues && <span className="small muted">What needs correction above comes first.</span>}
    </div>
  )
}
