'use client'

import { useRouter } from 'next/navigation'
import { useMemo, useState } from 'react'
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

/** Sends one file. A file that is too large or empty is refused before anything is sent; the server checks again. */
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
  const { send, isPending, refusal } = useAction(action)
  const [files, setFiles] = useState<readonly File[]>([])
  const [error, setError] = useState<string | undefined>(undefined)
  // A file input cannot be emptied from outside: a new one takes its place after each file that was accepted.
  const [round, setRound] = useState(0)

  const submit = () => {
    const file = files[0]
    if (file === undefined) {
      setError('choose a file first')
      return
    }
    if (file.size === 0 || file.size > maxBytes) {
      setError(
        file.size === 0
          ? `"${file.name}" is empty`
          : `"${file.name}" has ${asFileSize(file.size)}; at most ${asFileSize(maxBytes)} can be kept`,
      )
      return
    }
    setError(undefined)
    onSend?.()
    send({ ...input, fileName: file.name, file }, (value) => {
      router.refresh()
      setFiles([])
      setRound((previous) => previous + 1)
      onDone?.(value)
    })
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
        <Button type="submit" isPending={isPending} pendingLabel="Sending…">
          {buttonLabel}
        </Button>
      </div>
    </form>
  )
}
