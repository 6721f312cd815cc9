'use client'

import { useRouter } from 'next/navigation'
import { Button } from '@/app/_components/ui/button'
import { HIDDEN, nameStartCookie } from '@/app/_components/ui/preferences'
import { writePreference } from '@/app/_components/ui/write-preference'

/** Puts the first steps away in this browser; the company's own pages keep all of it. */
export function HideStart({ projectId }: { projectId: string }) {
  const router = useRouter()
  return (
    <Button
      weight="quiet"
      onPress={() => {
        writePreference(nameStartCookie(projectId), HIDDEN)
        router.refresh()
      }}
    >
      Hide
    </Button>
  )
}
