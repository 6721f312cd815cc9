import { askForWayOut } from '@/lib/data'
import { wayOutInput } from '@/lib/inputs'
import { askAndFollow, readInput, route } from '@/lib/server'

export const dynamic = 'force-dynamic'

/** A way out of what fails in a draft: a job that is followed, and stops when nobody follows it any more. */
export const POST = route(async (actor, params, request) => {
  const input = await readInput(request, wayOutInput, { revisionId: params.revisionId })
  return input instanceof Response ? input : askAndFollow(actor, () => askForWayOut(actor, input), request.signal)
})
