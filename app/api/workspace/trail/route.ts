import { exportTrail } from '@/lib/data'
import { route } from '@/lib/server'

/** The whole trail as one JSON file, for the administrator of the installation. */
export const GET = route((actor) => exportTrail(actor))
