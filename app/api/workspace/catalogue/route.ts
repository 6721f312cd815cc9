import { getCatalogueFile } from '@/lib/data'
import { route } from '@/lib/server'

/** The workspace's catalogue as a file, for another workspace. */
export const GET = route((actor) => getCatalogueFile(actor))
