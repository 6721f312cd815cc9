import { exportDesign } from '@/lib/data'
import { route } from '@/lib/server'

/** The design document of a revision, as JSON. */
export const GET = route((actor, params) => exportDesign(actor, params.revisionId ?? ''))
