import { useState } from 'react'
import type { Action } from './action-result'
import { useAction } from './use-action'

/**
 * A file that is chosen and shown what it would change, by an action that writes nothing. What was shown is forgotten as soon as another file, or
 * anything else beside it, is chosen.
 */
export function useFilePreview<Answer, Shown>(action: Action<Answer>) {
  const [files, setFiles] = useState<readonly File[]>([])
  const [error, setError] = useState<string | undefined>(undefined)
  const [shown, setShown] = useState<Shown | null>(null)
  const { send, isPending, refusal, clearRefusal } = useAction(action)
  const forget = () => {
    setShown(null)
    setError(undefined)
    clearRefusal()
  }
  const choose = (chosen: readonly File[]) => {
    setFiles(chosen)
    forget()
  }
  /** @param read  what is sent of the file, and what is shown of the answer */
  const look = async (
    read: (file: File) => Promise<{
      readonly input: Record<string, unknown>
      readonly show: (answer: Answer) => Shown
    }>,
  ) => {
    const [file] = files
    if (file === undefined) {
      setError('choose a file first')
      return
    }
    const { input, show } = await read(file)
    send(input, (answer) => setShown(show(answer)))
  }
  return { field: { files, error, onChange: choose }, shown, look, forget, isPending, refusal }
}
