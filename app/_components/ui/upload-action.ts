import { paths } from '@/lib/addresses'
import type { Action, ActionResult } from './action-result'

/** What a file may be sent for: the purposes of the route for uploads. */
export type UploadPurpose = 'artwork' | 'attachment' | 'sheet-preview' | 'sheet-import' | 'package-check'

/** An act that sends a file: `file` of its input is the body, the rest goes beside it. Answers as a server action does. */
export function uploadAction<T>(purpose: UploadPurpose): Action<T> {
  return async (input) => {
    const { file, ...said } = input as { readonly file: Blob } & Record<string, unknown>
    const response = await fetch(paths.upload(purpose), {
      method: 'POST',
      headers: {
        'content-type': 'application/octet-stream',
        'x-upload': encodeURIComponent(JSON.stringify(said)),
      },
      body: file,
    })
    return (await response.json()) as ActionResult<T>
  }
}
