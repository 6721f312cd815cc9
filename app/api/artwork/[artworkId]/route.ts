import { getArtworkFile } from '@/lib/data'
import { route } from '@/lib/server'

/** An artwork file of a revision. */
export const GET = route((actor, params) => getArtworkFile(actor, params.artworkId ?? ''))
