import { exportResults } from '@/lib/data'
import { route } from '@/lib/server'

/** The recorded results of a revision, as JSON. */
export const GET = route((actor, params) => exportResults(actor, params.revisionId ?? ''))
