'use client'

import { lazy, Suspense, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { Skeleton } from '@/app/_components/ui/skeleton'
import type { Bend } from '@/lib/engine'
import { useDraft } from '../draft'

/** Fetched when somebody asks for it: most visits to a bend do not. */
const TornadoView = lazy(async () => ({ default: (await import('./tornado-view')).TornadoView }))

/** Which input moves strain and life how far. Every input is tried at both its ends, so it is computed when asked for. */
export function TornadoPanel({ bend }: { bend: Bend }) {
  const { live } = useDraft()
  const [isOpen, setIsOpen] = useState(false)
  if (isOpen) {
    return (
      <Suspense fallback={<Skeleton />}>
        <TornadoView bend={bend} />
      </Suspense>
    )
  }
  const hasIssues = live.issues.length > 0
  return (
    <div className="row">
      <Button onPress={() => setIsOpen(true)} isDisabled={hasIssues}>
        Compute the sensitivity
      </Button>
      {hasIssues && <span className="small muted">Fix the errors above first.</span>}
    </div>
  )
}
