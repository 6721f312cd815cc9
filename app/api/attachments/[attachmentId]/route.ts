import { getAttachmentFile } from '@/lib/data'
import { route } from '@/lib/server'

/** A file that is attached to an answer or a comment. */
export const GET = route((actor, params) => getAttachmentFile(actor, params.attachmentId ?? ''))
