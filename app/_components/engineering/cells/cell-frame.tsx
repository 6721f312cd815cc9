'use client'

import { createContext, type ReactNode, useContext, useId } from 'react'
import { FieldFrame, type FieldTie } from '@/app/_components/ui/field-frame'
import { useFieldNotes } from '../draft/draft-context'
import { AssumedMark } from './assumed-mark'
import type { Place } from './place'

/** `grid`: the column head is the visible label. `form`: each field has its label, hint and refusal under one another. */
export type CellLayout = 'grid' | 'form'

const CellLayoutContext = createContext<CellLayout>('grid')

export function FormCells({ children }: { children: ReactNode }) {
  return <CellLayoutContext value="form">{children}</CellLayoutContext>
}

/** Cells of a table that stands within a form. */
export function GridCells({ children }: { children: ReactNode }) {
  return <CellLayoutContext value="grid">{children}</CellLayoutContext>
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

/** The frame of one input of the draft, with what stands beside it in the grid or form; or the plain value where the person may only read. */
export function CellFrame({ label, at, hint, isFixed, unit, text, isNumeric = false, children }: CellFrameProps) {
  const layout = useContext(CellLayoutContext)
  const { isReadOnly, issueByPath, misread, assumedByPath } = useFieldNotes()
  const id = useId()
  const error = misread[at.key] ?? issueByPath.get(at.path)
  const isForm = layout === 'form'
  const readOnly = isReadOnly || isFixed === true
  const tie: FieldTie = { id, hintId: `${id}-hint`, errorId: `${id}-error` }
  const assumption = assumedByPath.get(at.path)
  const mark = assumption !== undefined && (
    <AssumedMark assumption={assumption} label={`${label}, ${at.rowName}`} isReadOnly={readOnly} />
  )
  const frame = { tie, mark, error, errorClassName: 'field-error cell-error' }
  if (readOnly) {
    const value = (
      <span className={isNumeric ? 'cell-value num' : 'cell-value'}>
        {text === '' ? <span className="muted">–</span> : text}
        {unit !== undefined && text !== '' && isForm && <span className="unit"> {unit}</span>}
      </span>
    )
    return isForm ? (
      <div className="field">
        <FieldFrame {...frame} label={label} isValue>
          {value}
        </FieldFrame>
      </div>
    ) : (
      <span className="cell">
        <FieldFrame {...frame} label={`${label}, ${at.rowName}`} isValue isLabelHidden>
          {value}
        </FieldFrame>
      </span>
    )
  }
  const described = [error === undefined ? null : tie.errorId, isForm && hint !== undefined ? tie.hintId : null]
    .filter((part) => part !== null)
    .join(' ')
  const input = children({
    id,
    'aria-invalid': error === undefined ? undefined : true,
    'aria-describedby': described === '' ? undefined : described,
  })
  return isForm ? (
    <div className="field">
      <FieldFrame {...frame} label={label} unit={unit} hint={hint}>
        {input}
      </FieldFrame>
    </div>
  ) : (
    <span className="cell">
      <FieldFrame {...frame} label={`${label}, ${at.rowName}`} isLabelHidden>
        {input}
      </FieldFrame>
    </span>
  )
}
