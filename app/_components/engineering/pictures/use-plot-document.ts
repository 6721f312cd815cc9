'use client'

import { useSyncExternalStore } from 'react'

const subscribe = () => () => undefined

/** The page's document once the page lives in a browser; null while the server writes it, where plots are left out. */
export function usePlotDocument(): Document | null {
  return useSyncExternalStore(
    subscribe,
    () => window.document,
    () => null,
  )
}
