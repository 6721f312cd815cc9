import { getArtworkPicture } from '@/lib/data'
import { route } from '@/lib/server'

/** The layers of a revision's artwork as they are looked at. */
export const GET = route((actor, params) => getArtworkPicture(actor, params.revisionId ?? ''))
