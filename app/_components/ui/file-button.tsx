import { type ChangeEvent, useRef } from 'react'
import { Button } from './button'

interface FileButtonProps {
  label: string
  /** What a screen reader calls the input behind the button. */
  inputLabel: string
  accept?: string
  onChoose: (file: File) => Promise<void>
}

/** A button that opens the platform's file chooser, and gets one file. The same file can be chosen twice in a row. */
export function FileButton({ label, inputLabel, accept, onChoose }: FileButtonProps) {
  const input = useRef<HTMLInputElement>(null)
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0]
    event.target.value = ''
    if (file !== undefined) void onChoose(file)
  }
  return (
    <>
      <Button onPress={() => input.current?.click()}>{label}</Button>
      <input
        ref={input}
        type="file"
        {...(accept === undefined ? {} : { accept })}
        className="sr-only"
        aria-label={inputLabel}
        tabIndex={-1}
        onChange={choose}
      />
    </>
  )
}
