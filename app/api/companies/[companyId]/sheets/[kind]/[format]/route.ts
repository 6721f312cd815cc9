import { exportSheetFile, NotFoundError } from '@/lib/data'
import { exportSheetFileInput } from '@/lib/inputs'
import { route } from '@/lib/server'

/** A capability matrix or a shelf as a file for a spreadsheet program. */
export const GET = route((actor, params, request) => {
  const unit = new URL(request.url).searchParams.get('unit') ?? undefined
  const input = exportSheetFileInput.safeParse({ ...params, unit })
  if (!input.success) throw new NotFoundError('file')
  return exportSheetFile(actor, input.data)
})
