import { getQuotationFile } from '@/lib/data'
import { route } from '@/lib/server'

/** A request for quotation: `?format=pdf&fabricator=<id>`, or `xlsx` and `json`. */
export const GET = route(
  (actor, params, request) => {
    const query = new URL(request.url).searchParams
    return getQuotationFile(actor, params.revisionId ?? '', {
      format: query.get('format'),
      companyId: query.get('fabricator'),
    })
  },
  { turn: 'documents' },
)
