import { exportTrail } from '@/lib/data'
import { route } from '@/lib/server'

/** The whole trail as JSON Lines, for whoever looks after the installation. */
export const GET = route((actor) => exportTrail(actor))
