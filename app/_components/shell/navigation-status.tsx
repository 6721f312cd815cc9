'use client'

import { usePathname, useSearchParams } from 'next/navigation'
import { useEffect, useState } from 'react'

/** Most pages are there sooner, and a line that flickers helps nobody. */
const PAUSE_MS = 250

/**
 * Says that the next page is on its way. Pages are answered whole, so that one that is denied has its own status, and until
 * then the old one stands.
 */
export function NavigationStatus() {
  const here = `${usePathname()}?${useSearchParams()}`
  const [leaving, setLeaving] = useState<string | null>(null)

  useEffect(() => {
    let timer: ReturnType<typeof setTimeout> | undefined
    const onClick = (event: MouseEvent) => {
      if (!leadsElsewhere(event)) return
      clearTimeout(timer)
      timer = setTimeout(() => setLeaving(here), PAUSE_MS)
    }
    document.addEventListener('click', onClick)
    return () => {
      document.removeEventListener('click', onClick)
      clearTimeout(timer)
    }
  }, [here])

  return (
    <p className="navigation-status no-print" role="status">
      {leaving === here && 'Loading…'}
    </p>
  )
}

const findLink = (target: EventTarget | null) => (target instanceof Element ? target.closest('a') : null)

/** A plain click on a link to another page of this site. */
function leadsElsewhere(event: MouseEvent): boolean {
  const link = findLink(event.target)
  if (link === null || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) {
    return false
  }
  if (link.target !== '' || link.hasAttribute('download') || link.pathname.startsWith('/api/')) return false
  const isSamePage = link.pathname === location.pathname && link.search === location.search
  return link.origin === location.origin && !isSamePage
}
