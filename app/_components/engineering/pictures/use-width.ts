'use client'

import { type RefObject, useEffect, useRef, useState } from 'react'

/**
 * Width of an element in whole pixels, so that pictures are drawn at the size at which they are shown and their type
 * keeps its size.
 */
export function useWidth<T extends HTMLElement>(initialPx: number): { ref: RefObject<T | null>; widthPx: number } {
  const ref = useRef<T>(null)
  const [widthPx, setWidthPx] = useState(initialPx)
  useEffect(() => {
    const element = ref.current
    if (element === null) return
    const observer = new ResizeObserver((entries) => {
      const width = entries[0]?.contentRect.width
      if (width !== undefined && width > 0) setWidthPx(Math.floor(width))
    })
    observer.observe(element)
    return () => observer.disconnect()
  }, [])
  return { ref, widthPx }
}
