import { getStatusListFile } from '@/lib/data'
import { route } from '@/lib/server'

/** The signed list of which issued revisions are in force, as far as the person may see them. */
export const GET = route((actor) => getStatusListFile(actor))
