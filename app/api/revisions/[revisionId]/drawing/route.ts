import { getDrawingFile } from '@/lib/data'
import { route } from '@/lib/server'

/** The drawing of a revision: `?format=pdf` for all sheets, `?format=svg&sheet=2` for one, `?format=paper-a4` for the paper model. */
export const GET = route(
  (actor, params, request) => {
    const query = new URL(request.url).searchParams
    return getDrawingFile(actor, params.revisionId ?? '', { format: query.get('format'), sheet: query.get('sheet') })
  },
  { turn: 'documents' },
)
