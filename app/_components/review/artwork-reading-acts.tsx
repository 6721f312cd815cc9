'use client'

import { useRouter } from 'next/navigation'
import { useEffect } from 'react'
import { ActionButton } from '@/app/_components/ui/action-button'
import { asResult } from '@/lib/engine/units'
import { readArtworkAgain, stopArtworkReading } from './actions'

/** How often the page looks how far reading is. */
const LOOK_MS = 1500

/** The page looks again by itself until the files are read. */
export function ReadingProgress({
  revisionId,
  progress,
  mayStop,
}: {
  revisionId: string
  progress: number
  mayStop: boolean
}) {
  const router = useRouter()
  useEffect(() => {
    const timer = setInterval(() => router.refresh(), LOOK_MS)
    return () => clearInterval(timer)
  }, [router])
  return (
    <div className="row" role="status">
      <span>Reading the files: {asResult(Math.floor(progress * 100), 'pct')}</span>
      <progress value={progress} max={1} aria-label="Reading the files" />
      {mayStop && (
        <ActionButton action={stopArtworkReading} input={{ revisionId }} weight="quiet">
          Stop
        </ActionButton>
      )}
    </div>
  )
}

export function ReadAgainButton({ revisionId }: { revisionId: string }) {
  return (
    <ActionButton action={readArtworkAgain} input={{ revisionId }}>
      Read the files
    </ActionButton>
  )
}
