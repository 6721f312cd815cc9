'use client'

import { CheckboxField } from '@/app/_components/ui/choice-fields'
import type { MarkableList } from '@/lib/engine'
import { useDraft, useEdit } from './draft'
import { markNone } from './draft/none-marks'

interface NoneMarkProps {
  readonly list: MarkableList
  /** `This part has no holes`. */
  readonly label: string
}

/** An empty list is unknown until somebody says that the part has none of the kind: one click. */
export function NoneMark({ list, label }: NoneMarkProps) {
  const { state, isReadOnly } = useDraft()
  const edit = useEdit()
  const isMarked = state.design.features.none.includes(list)
  if (isReadOnly) return <p className="small">{isMarked ? `${label}.` : 'Not marked as none: unknown.'}</p>
  return (
    <CheckboxField
      isSelected={isMarked}
      onChange={(isNone) => edit(`none-${list}`, (design) => markNone(design, list, isNone))}
    >
      {label}
    </CheckboxField>
  )
}
