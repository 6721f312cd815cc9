import { getPackageFile } from '@/lib/data'
import { route } from '@/lib/server'

/** The release package of a revision, in the edition of the person who asks. */
export const GET = route((actor, params) => getPackageFile(actor, params.revisionId ?? ''))
