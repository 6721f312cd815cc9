'use client'

import { useRouter } from 'next/navigation'
import { useMemo, useRef, useState } from 'react'
import { makeRequestKey } from '@/app/_components/ui/request-key'
import { uploadAction } from '@/app/_components/ui/upload-action'

/** A file that goes with a comment; its key stays through retries, so that it is kept once. */
export interface CommentFile {
  readonly key: string
  readonly name: string
  readonly file: File
}

export interface CommentFiles {
  readonly files: readonly CommentFile[]
  readonly add: (files: readonly File[]) => void
  readonly remove: (key: string) => void
  /** Sends what was chosen, once the comment is stored. */
  readonly sendWith: (commentId: string, onAllSent?: () => void) => void
  readonly isSending: boolean
  /** Why files are not kept though the comment is; they stay chosen. */
  readonly failure: string | null
  /** Sends those again; null where nothing is to be sent again. */
  readonly sendAgain: (() => void) | null
}

/** What a browser calls a picture that was pasted. */
const PASTED = /^image\.(\w+)$/

/**
 * Files that are chosen while a comment is written: they are sent when it is stored, one after the other, as attachments of it. Where one is refused, it
 * and those after it stay chosen.
 */
export function useCommentFiles(revisionId: string): CommentFiles {
  const router = useRouter()
  const upload = useMemo(() => uploadAction<unknown>('attachment'), [])
  const [files, setFiles] = useState<readonly CommentFile[]>([])
  const [isSending, setSending] = useState(false)
  const [failed, setFailed] = useState<{
    readonly commentId: string
    readonly because: string
    readonly onAllSent: () => void
  } | null>(null)
  const pastedCount = useRef(0)
  const latest = useRef(files)
  latest.current = files

  const nameOf = ({ name }: File): string => {
    const ending = PASTED.exec(name)?.[1]
    if (ending === undefined) return name
    pastedCount.current += 1
    return `picture-${pastedCount.current}.${ending}`
  }
  const send = async (commentId: string, onAllSent: () => void) => {
    setSending(true)
    setFailed(null)
    let isAllSent = true
    for (const { key, name, file } of latest.current) {
      const because = await sendOne(
        upload({
          revisionId,
          target: { kind: 'comment', commentId },
          fileName: name,
          file,
          requestKey: key,
        }),
      )
      if (because !== null) {
        setFailed({ commentId, because: `${name}: ${because}`, onAllSent })
        isAllSent = false
        break
      }
      setFiles((left) => left.filter((each) => each.key !== key))
    }
    setSending(false)
    router.refresh()
    if (isAllSent) onAllSent()
  }
  return {
    files,
    add: (chosen) =>
      setFiles((before) => [...before, ...chosen.map((file) => ({ key: makeRequestKey(), name: nameOf(file), file }))]),
    remove: (key) => {
      setFiles((before) => before.filter((each) => each.key !== key))
      if (files.length === 1) setFailed(null)
    },
    sendWith: (commentId, onAllSent = () => {}) => {
      if (latest.current.length > 0) void send(commentId, onAllSent)
      else onAllSent()
    },
    isSending,
    failure: failed?.because ?? null,
    sendAgain: failed === null || isSending ? null : () => void send(failed.commentId, failed.onAllSent),
  }
}

/** @returns why it was not kept; null where it is */
async function sendOne(sent: ReturnType<ReturnType<typeof uploadAction<unknown>>>): Promise<string | null> {
  try {
    const result = await sent
    if (result.ok) return null
    const [issue] = 'issues' in result.refusal ? result.refusal.issues : []
    return issue === undefined ? result.refusal.message : `${result.refusal.message} ${issue.message}`
  } catch {
    return 'The server did not answer.'
  }
}
