import { exportTrail } from '@/lib/data'
import { route } from '@/lib/server'

/** The whole trail as one JSON file, for whoever looks after the installation. */
export const GET = route((actor) => exportTrail(actor))
