'use client'

import { type ReactNode, useEffect, useRef, useState } from 'react'

interface TableFrameProps {
  /** What the table is, for the person who reaches the frame with the keyboard. */
  label: string
  className?: string
  children: ReactNode
}

/** Lets a wide table scroll by itself; the frame takes the focus only where there is something to scroll. */
export function TableFrame({ label, className, children }: TableFrameProps) {
  const frame = useRef<HTMLDivElement>(null)
  const [isScrollable, setIsScrollable] = useState(false)
  useEffect(() => {
    const element = frame.current
    if (element === null) return
    const observer = new ResizeObserver(() => setIsScrollable(element.scrollWidth > element.clientWidth + 1))
    observer.observe(element)
    // A table that grows changes nothing about the size of its frame.
    for (const child of element.children) observer.observe(child)
    return () => observer.disconnect()
  }, [])
  return (
    <div
      ref={frame}
      className={className === undefined ? 'table-frame' : `table-frame ${className}`}
      {...(isScrollable ? { tabIndex: 0, role: 'group', 'aria-label': label } : {})}
    >
      {children}
    </div>
  )
}
