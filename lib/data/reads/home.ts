import 'server-only'
import type { Actor } from '../records/authorization'
import type { WaitView } from '../views'
import { findLeadCounts, type LeadCountView } from './lead-counts'
import type { Paged } from './paged'
import { listWaitsOfPeople, readStandings } from './waits'

export interface HomeView {
  readonly waits: readonly WaitView[]
  readonly leadCounts: Paged<LeadCountView>
  /** Revisions of which the page cannot say anything yet: they are being worked out, or cannot be. */
  readonly notWorkedOut: number
}

/** After an upgrade everything is worked out once more; nobody waits longer than this for their page. Our choice. */
const LONGEST_MS = 2_000

/** What waits for this person, and where the revisions stand that they lead. */
export function getHome(actor: Actor, leadPage = 1): Promise<HomeView> {
  const startedAt = performance.now()
  return readStandings(
    actor,
    async ({ tx, rights }, notWorkedOut) => {
      const waits = await listWaitsOfPeople(tx, [rights])
      return {
        waits: waits.get(rights.userId) ?? [],
        leadCounts: await findLeadCounts(tx, rights, leadPage),
        notWorkedOut,
      }
    },
    () => performance.now() - startedAt > LONGEST_MS,
  )
}
