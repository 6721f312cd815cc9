'use client'

import { useId } from 'react'

interface FileFieldProps {
  label: string
  hint?: string
  error?: string | undefined
  accept?: string
  isMultiple?: boolean
  files: readonly File[]
  onChange: (files: readonly File[]) => void
}

/** The platform's own file input: it works with a keyboard, a screen reader and a phone's file chooser alike. */
export function FileField({ label, hint, error, accept, isMultiple = false, files, onChange }: FileFieldProps) {
  const id = useId()
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <input
        id={id}
        type="file"
        className="input file-input"
        accept={accept}
        multiple={isMultiple}
        aria-invalid={error !== undefined}
        aria-describedby={`${id}-hint ${id}-error`}
        onChange={(event) => onChange([...(event.target.files ?? [])])}
      />
      {hint !== undefined && (
        <span id={`${id}-hint`} className="field-hint">
          {hint}
        </span>
      )}
      {files.length > 1 && <span className="field-hint">{files.length} files chosen</span>}
      {error !== undefined && (
        <span id={`${id}-error`} className="field-error" role="alert">
          {error}
        </span>
      )}
    </div>
  )
}
