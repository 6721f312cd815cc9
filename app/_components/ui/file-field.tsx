'use client'

import { type DragEvent, useId, useState } from 'react'

interface FileFieldProps {
  label: string
  hint?: string
  error?: string | undefined
  accept?: string
  isMultiple?: boolean
  files: readonly File[]
  onChange: (files: readonly File[]) => void
}

const holdsFiles = (event: DragEvent) => event.dataTransfer.types.includes('Files')

/**
 * The platform's own file input: it works with a keyboard, a screen reader and a phone's file chooser alike. Files can be dropped anywhere on
 * the field.
 */
export function FileField({ label, hint, error, accept, isMultiple = false, files, onChange }: FileFieldProps) {
  const id = useId()
  const [isOver, setOver] = useState(false)
  const drop = (event: DragEvent) => {
    if (!holdsFiles(event)) return
    event.preventDefault()
    setOver(false)
    const dropped = [...event.dataTransfer.files].slice(0, isMultiple ? undefined : 1)
    onChange(dropped)
    // The input shows what was dropped, as if it had been chosen there.
    const input = event.currentTarget.querySelector('input')
    if (input === null) return
    const shown = new DataTransfer()
    for (const file of dropped) shown.items.add(file)
    input.files = shown.files
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the input inside does the same with a keyboard
    <div
      className="field"
      onDragOver={(event) => {
        if (!holdsFiles(event)) return
        event.preventDefault()
        setOver(true)
      }}
      onDragLeave={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget as Node | null)) setOver(false)
      }}
      onDrop={drop}
    >
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        type="file"
        className="input file-input"
        data-over={isOver ? '' : undefined}
        accept={accept}
        multiple={isMultiple}
        aria-invalid={error !== undefined}
        aria-describedby={`${id}-hint ${id}-error`}
        onChange={(event) => onChange([...(event.target.files ?? [])])}
      />
      <span id={`${id}-hint`} className="field-hint">
        {hint}
        {hint !== undefined && ' '}
        {isMultiple ? 'Files can be dropped here.' : 'A file can be dropped here.'}
      </span>
      {files.length > 1 && <span className="field-hint">{files.length} files chosen</span>}
      {error !== undefined && (
        <span id={`${id}-error`} className="field-error" role="alert">
          {error}
        </span>
      )}
    </div>
  )
}
