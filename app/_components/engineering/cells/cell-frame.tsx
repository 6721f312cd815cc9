'use client'

import { createContext, type ReactNode, useContext, useId } from 'react'
import { useDraft } from '../draft/draft-context'
import { AssumedMark } from './assumed-mark'
import type { Place } from './place'

/** `grid`: the column head is the visible label. `form`: each field has its label, hint and refusal under one another. */
export type CellLayout = 'grid' | 'form'

const CellLayoutContext = createContext<CellLayout>('grid')

export function FormCells({ children }: { children: ReactNode }) {
  return <CellLayoutContext value="form">{children}</CellLayoutContext>
}

export interface CellProps {
  readonly label: string
  readonly at: Place
  readonly hint?: string
  /** Refuses all edits although the page allows them: the value follows from another field. */
  readonly isFixed?: boolean
}

interface CellFrameProps extends CellProps {
  readonly unit?: string
  /** What a page without edit rights shows instead of the input. */
  readonly text: string
  readonly isNumeric?: boolean
  readonly children: (input: {
    readonly id: string
    readonly 'aria-invalid': boolean | undefined
    readonly 'aria-describedby': string | undefined
  }) => ReactNode
}

/** Label, refusal and unit round one input, or the plain value where the person may only read. */
export function CellFrame({ label, at, hint, isFixed, unit, text, isNumeric = false, children }: CellFrameProps) {
  const layout = useContext(CellLayoutContext)
  const { isReadOnly, issueByPath, state, assumedByPath } = useDraft()
  const id = useId()
  const error = state.misread[at.key] ?? issueByPath.get(at.path)
  const isForm = layout === 'form'
  const readOnly = isReadOnly || isFixed === true
  const described = [error === undefined ? null : `${id}-error`, isForm && hint !== undefined ? `${id}-hint` : null]
    .filter((part) => part !== null)
    .join(' ')
  const refusal = error !== undefined && (
    <span id={`${id}-error`} className="field-error cell-error">
      {error}
    </span>
  )
  const assumption = assumedByPath.get(at.path)
  const mark = assumption !== undefined && (
    <AssumedMark assumption={assumption} label={`${label}, ${at.rowName}`} isReadOnly={readOnly} />
  )
  if (readOnly) {
    const value = (
      <span className={isNumeric ? 'cell-value num' : 'cell-value'}>
        {text === '' ? <span className="muted">–</span> : text}
        {unit !== undefined && text !== '' && isForm && <span className="unit"> {unit}</span>}
      </span>
    )
    return isForm ? (
      <div className="field">
        <span className="field-label">{label}</span>
        {value}
        {mark}
        {refusal}
      </div>
    ) : (
      <span className="cell">
        {value}
        {mark}
        {refusal}
      </span>
    )
  }
  const input = children({
    id,
    'aria-invalid': error === undefined ? undefined : true,
    'aria-describedby': described === '' ? undefined : described,
  })
  if (!isForm) {
    return (
      <span className="cell">
        <label htmlFor={id} className="sr-only">
          {label}, {at.rowName}
        </label>
        {input}
        {mark}
        {refusal}
      </span>
    )
  }
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        {label}
      </label>
      {unit === undefined ? (
        input
      ) : (
        <span className="with-unit">
          {input}
          <span className="unit">{unit}</span>
        </span>
      )}
      {hint !== undefined && (
        <span id={`${id}-hint`} className="field-hint">
          {hint}
        </span>
      )}
      {mark}
      {refusal}
    </div>
  )
}
