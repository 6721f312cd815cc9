import { getKeyRegisterFile } from '@/lib/data'
import { route } from '@/lib/server'

/** The signed register of this installation's keys, for `npm run package:verify -- package.zip --keys keys.json`. */
export const GET = route((actor) => getKeyRegisterFile(actor))
