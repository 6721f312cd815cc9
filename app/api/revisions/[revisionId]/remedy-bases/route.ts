import { getRemedyBases } from '@/lib/data'
import { route } from '@/lib/server'

/** What the remedies of a bend cost and which materials are on the shelf, by fabricator: fetched when remedies are sought. */
export const GET = route(
  async (actor, params) =>
    Response.json(await getRemedyBases(actor, params.revisionId ?? ''), {
      headers: { 'cache-control': 'private, no-store' },
    }),
  { turn: 'calculations' },
)
