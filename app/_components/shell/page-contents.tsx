'use client'

import { usePathname } from 'next/navigation'
import { useEffect, useState } from 'react'
import { PopupMenu } from '@/app/_components/ui/menu'

/** Shorter pages, and those in fewer parts, are read by scrolling. Our choice. */
const LONG_IN_WINDOWS = 2.5
const LEAST_PARTS = 3

/**
 * The parts of a long page, by their headings, to go to from anywhere on it. The headings are those that the page shows when the list is
 * opened: folded parts and tables that arrive later are never missing or left over.
 */
export function PageContents() {
  const pathname = usePathname()
  const [isLong, setIsLong] = useState(false)
  const [headings, setHeadings] = useState<readonly HTMLElement[]>([])

  // biome-ignore lint/correctness/useExhaustiveDependencies: another page is measured again.
  useEffect(() => {
    const main = findMain()
    if (main === null) return
    const measure = (): void =>
      setIsLong(main.scrollHeight > LONG_IN_WINDOWS * window.innerHeight && listHeadings().length >= LEAST_PARTS)
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(main)
    return () => observer.disconnect()
  }, [pathname])

  if (!isLong) return null
  return (
    <nav aria-label="Parts of this page" className="page-contents no-print">
      <PopupMenu
        label="On this page"
        placement="top end"
        onOpen={() => setHeadings(listHeadings())}
        items={headings.map((heading, at) => ({
          id: `part-${at}`,
          label: heading.textContent.trim(),
          onAction: () => goTo(heading),
        }))}
      />
    </nav>
  )
}

const findMain = (): HTMLElement | null => document.getElementById('content')

/** Of what is shown: a folded part has no place to go to. */
function listHeadings(): HTMLElement[] {
  const all = findMain()?.querySelectorAll<HTMLElement>('h2') ?? []
  return [...all].filter((heading) => heading.checkVisibility() && heading.textContent.trim() !== '')
}

/** Once the list has closed, which gives the focus back to its button: then it goes on from the heading. */
function goTo(heading: HTMLElement): void {
  requestAnimationFrame(() =>
    requestAnimationFrame(() => {
      heading.tabIndex = -1
      heading.focus({ preventScroll: true })
      heading.scrollIntoView({ block: 'start' })
    }),
  )
}
