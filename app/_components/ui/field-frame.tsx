'use client'

import type { ReactNode } from 'react'
import { FieldError } from 'react-aria-components/FieldError'
import { Group } from 'react-aria-components/Group'
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

/** Ids by which a plain input is tied to its texts. */
export interface FieldTie {
  readonly id: string
  readonly hintId: string
  readonly errorId: string
}

interface FieldFrameProps extends FieldTexts {
  /** Shown after the input, e.g. `°C`. */
  readonly unit?: string | undefined
  /** What stands between hint and refusal. */
  readonly mark?: ReactNode
  /** For a plain input; where it is absent, the react-aria field around ties its parts together. */
  readonly tie?: FieldTie
  /** What is framed is a plain value, which a label cannot point at. */
  readonly isValue?: boolean
  readonly errorClassName?: string
  readonly children: ReactNode
}

/** Label, unit, hint and refusal round one input: of forms and of grids alike. */
export function FieldFrame({
  label,
  hint,
  error,
  isOptional,
  isLabelHidden,
  unit,
  mark,
  tie,
  isValue = false,
  errorClassName = 'field-error',
  children,
}: FieldFrameProps) {
  const labelClassName = isLabelHidden === true ? 'sr-only' : 'field-label'
  const labelText = (
    <>
      {label}
      {isOptional && <span className="field-optional"> (optional)</span>}
    </>
  )
  if (tie === undefined) {
    return (
      <>
        <Label className={labelClassName}>{labelText}</Label>
        {unit === undefined ? (
          children
        ) : (
          <Group className="with-unit">
            {children}
            <span className="unit">{unit}</span>
          </Group>
        )}
        {hint !== undefined && (
          <Text slot="description" className="field-hint">
            {hint}
          </Text>
        )}
        {mark}
        <FieldError className={errorClassName}>{error}</FieldError>
      </>
    )
  }
  return (
    <>
      {isValue ? (
        <span className={labelClassName}>{labelText}</span>
      ) : (
        <label htmlFor={tie.id} className={labelClassName}>
          {labelText}
        </label>
      )}
      {unit === undefined ? (
        children
      ) : (
        <span className="with-unit">
          {children}
          <span className="unit">{unit}</span>
        </span>
      )}
      {hint !== undefined && (
        <span id={tie.hintId} className="field-hint">
          {hint}
        </span>
      )}
      {mark}
      {error !== undefined && (
        <span id={tie.errorId} className={errorClassName}>
          {error}
        </span>
      )}
    </>
  )
}
