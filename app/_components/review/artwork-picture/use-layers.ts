import { useEffect, useState } from 'react'
import { paths } from '@/lib/addresses'
import { type DrawnLayer, readPicture } from '@/lib/artwork-picture'

export type LayersState =
  | { readonly state: 'loading' }
  | { readonly state: 'failed'; readonly reason: string }
  | { readonly state: 'there'; readonly layers: readonly DrawnLayer[] }

/** Fetches the layers of a revision's artwork once they are looked at. */
export function useLayers(revisionId: string): LayersState {
  const [found, setFound] = useState<LayersState>({ state: 'loading' })
  useEffect(() => {
    const leave = new AbortController()
    const load = async () => {
      const answer = await fetch(paths.artworkPicture(revisionId), { signal: leave.signal })
      if (!answer.ok) throw new Error(`the server answered ${answer.status}`)
      const layers = readPicture(new Uint8Array(await answer.arrayBuffer()))
      if (!leave.signal.aborted) setFound({ state: 'there', layers })
    }
    load().catch((error: unknown) => {
      if (!leave.signal.aborted) setFound({ state: 'failed', reason: error instanceof Error ? error.message : '' })
    })
    return () => leave.abort()
  }, [revisionId])
  return found
}
