'use client'

import { lazy, Suspense, useState, useTransition } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Skeleton } from '@/app/_components/ui/skeleton'
import type { Bend } from '@/lib/engine'
import { useDraft } from '../draft'

/** Fetched when somebody asks for remedies: most visits to a bend do not. */
const RemedyWorkbench = lazy(async () => ({ default: (await import('./remedy-workbench')).RemedyWorkbench }))

/**
 * Changes that the trade would try on this bend. They are sought on demand, since some hundred sections are computed;
 * typing in the fields above never waits for it.
 */
export function RemedyPanel({ bend, isWantedAtOnce = false }: { bend: Bend; isWantedAtOnce?: boolean }) {
  const { problemCount } = useDraft()
  const [isOpen, setIsOpen] = useState(isWantedAtOnce)
  // The button stays, with the focus on it, until the workbench takes the focus over. It is not announced as pending: the
  // announcement would outlive the button that it names.
  const [, startTransition] = useTransition()
  if (isOpen) {
    return (
      <Suspense fallback={<Skeleton />}>
        <RemedyWorkbench bend={bend} />
      </Suspense>
    )
  }
  return (
    <div className="row">
      <Button onPress={() => startTransition(() => setIsOpen(true))} isDisabled={problemCount > 0}>
        Find remedies
      </Button>
      {problemCount > 0 && <span className="small muted">Fix the errors above first.</span>}
    </div>
  )
}
