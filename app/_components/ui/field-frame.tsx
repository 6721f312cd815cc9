'use client'

import type { ReactNode } from 'react'
import { FieldError } from 'react-aria-components/FieldError'
import { Label } from 'react-aria-components/Label'
import { Text } from 'react-aria-components/Text'

export interface FieldTexts {
  label: string
  /** What the field is for, or the form of what is expected. */
  hint?: ReactNode
  /** Why the present content is refused. */
  error?: string | undefined
  isOptional?: boolean
  /** Keeps the label for assistive tools only, where a table's column already says it. */
  isLabelHidden?: boolean
}

/** Label, hint and refusal round the input of a react-aria field, which ties them together for assistive tools. */
export function FieldFrame({
  label,
  hint,
  error,
  isOptional,
  isLabelHidden,
  children,
}: FieldTexts & { children: ReactNode }) {
  return (
    <>
      <Label className={isLabelHidden === true ? 'sr-only' : 'field-label'}>
        {label}
        {isOptional && <span className="field-optional"> (optional)</span>}
      </Label>
      {children}
      {hint !== undefined && (
        <Text slot="description" className="field-hint">
          {hint}
        </Text>
      )}
      <FieldError className="field-error">{error}</FieldError>
    </>
  )
}
