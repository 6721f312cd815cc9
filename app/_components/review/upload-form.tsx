'use client'

import { useRouter } from 'next/navigation'
import { useEffect, useEffectEvent, useMemo, useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FileField } from '@/app/_components/ui/file-field'
import { FormError } from '@/app/_components/ui/form-error'
import { type UploadPurpose, uploadAction } from '@/app/_components/ui/upload-action'
import { useAction } from '@/app/_components/ui/use-action'
import { asFileSize } from '@/lib/engine/units'

interface UploadFormProps<T> {
  purpose: UploadPurpose
  /** What is sent beside the file. */
  input: Record<string, unknown>
  label: string
  hint: string
  buttonLabel: string
  accept?: string
  maxBytes: number
  onSend?: () => void
  onDone?: (value: T) => void
}

/**
 * Sends files one after the other, each as an act of its own. One that is too large or empty is refused before anything is sent; the server
 * checks again. Where one is refused, it and those after it stay chosen.
 */
export function UploadForm<T>({
  purpose,
  input,
  label,
  hint,
  buttonLabel,
  accept,
  maxBytes,
  onSend,
  onDone,
}: UploadFormProps<T>) {
  const router = useRouter()
  const action = useMemo(() => uploadAction<T>(purpose), [purpose])
  const { send, isPending, refusal, clearRefusal } = useAction(action)
  const [files, setFiles] = useState<readonly File[]>([])
  /** What is being sent, the next one first. */
  const [queue, setQueue] = useState<readonly File[]>([])
  const [error, setError] = useState<string | undefined>(undefined)
  // A file input cannot be emptied from outside: a new one takes its place after the files were accepted.
  const [round, setRound] = useState(0)
  const [next] = queue
  const isMany = files.length > 1

  const sendNext = useEffectEvent((file: File) => {
    send(
      { ...input, fileName: file.name, file },
      (value) => {
        const left = queue.slice(1)
        setQueue(left)
        setFiles(left)
        if (left.length === 0) {
          router.refresh()
          setRound((previous) => previous + 1)
        }
        onDone?.(value)
      },
      (refused) => (isMany ? { ...refused, message: `${file.name}: ${refused.message}` } : refused),
    )
  })
  useEffect(() => {
    if (next === undefined || isPending) return
    if (refusal === null) sendNext(next)
    else setQueue([])
  }, [next, isPending, refusal])

  const submit = () => {
    if (files.length === 0) {
      setError('choose a file first')
      return
    }
    const bad = files.find(({ size }) => size === 0 || size > maxBytes)
    if (bad !== undefined) {
      setError(
        bad.size === 0
          ? `"${bad.name}" is empty`
          : `"${bad.name}" has ${asFileSize(bad.size)}; at most ${asFileSize(maxBytes)} can be kept`,
      )
      return
    }
    setError(undefined)
    clearRefusal()
    onSend?.()
    setQueue(files)
  }

  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault()
        submit()
      }}
    >
      <FileField
        key={round}
        label={label}
        hint={hint}
        isMultiple
        error={error}
        files={files}
        onChange={(chosen) => {
          setFiles(chosen)
          setError(undefined)
        }}
        {...(accept === undefined ? {} : { accept })}
      />
      <FormError refusal={refusal} />
      <div className="row">
        <Button
          type="submit"
          isPending={isPending || queue.length > 0}
          pendingLabel={isMany ? `Sending, ${queue.length} to go…` : 'Sending…'}
        >
          {buttonLabel}
        </Button>
      </div>
    </form>
  )
}
