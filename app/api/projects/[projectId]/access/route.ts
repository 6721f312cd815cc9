import { getProjectAccessFile } from '@/lib/data'
import { route } from '@/lib/server'

/** Who opened what of a project, as CSV. */
export const GET = route((actor, params) => getProjectAccessFile(actor, params.projectId ?? ''))
