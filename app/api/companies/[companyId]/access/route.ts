import { getCompanyAccessFile } from '@/lib/data'
import { route } from '@/lib/server'

/** Who opened what of a company, as CSV. */
export const GET = route((actor, params) => getCompanyAccessFile(actor, params.companyId ?? ''))
