import { openLiveFeed, route } from '@/lib/server'

export const dynamic = 'force-dynamic'

/** What happens to threads of the revision, as it happens. */
export const GET = route((actor, params, request) => openLiveFeed(actor, params.revisionId ?? '', request))
