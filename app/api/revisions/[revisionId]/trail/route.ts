import { getTrailFile } from '@/lib/data'
import { route } from '@/lib/server'

/** The trail of a revision as a file: `?format=csv` or `?format=pdf`. */
export const GET = route(
  (actor, params, request) =>
    getTrailFile(actor, params.revisionId ?? '', new URL(request.url).searchParams.get('format')),
  { turn: 'documents' },
)
