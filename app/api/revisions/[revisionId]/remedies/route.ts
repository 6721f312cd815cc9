import { askForRemedies } from '@/lib/data'
import { remediesInput } from '@/lib/inputs'
import { askAndFollow, readInput, route } from '@/lib/server'

export const dynamic = 'force-dynamic'

/** Changes that the trade would try on a bend of a draft: a job that is followed, and stops when nobody follows it any more. */
export const POST = route(async (actor, params, request) => {
  const input = await readInput(request, remediesInput, { revisionId: params.revisionId })
  return input instanceof Response ? input : askAndFollow(actor, () => askForRemedies(actor, input), request.signal)
})
