'use client'

import { type FieldNode, listChoices } from '@/lib/engine'
import { getUnitSymbol } from '@/lib/engine/units'
import type { CellProps } from './cell-frame'
import { ChoiceCell, ObservedCell, OptionalChoiceCell } from './choice-cells'
import {
  NumberCell,
  OptionalNumberCell,
  OptionalPlanLengthCell,
  OptionalThicknessCell,
  PlanLengthCell,
} from './number-cells'
import { LongTextCell, TextCell } from './text-cells'

/** What the schema says of a field: enough to choose the input. */
export interface FieldSchema {
  safeParse(value: unknown): { readonly success: boolean }
}

export type FieldValue = string | number | boolean | null

interface FieldCellProps {
  /** The field's entry in the dictionary. */
  readonly words: FieldNode
  readonly schema: FieldSchema
  readonly at: CellProps['at']
  readonly value: FieldValue
  readonly onChange: (value: FieldValue) => void
  /** In place of the dictionary's. */
  readonly hint?: string | undefined
  /** Text over several lines. */
  readonly isLong?: boolean
}

/** The input that suits a field of the design, by its entry in the dictionary and its schema. A new field needs no other code. */
export function FieldCell({ words, schema, at, value, onChange, hint = words.hint, isLong = false }: FieldCellProps) {
  const mayBeNull = schema.safeParse(null).success
  const cell = { label: words.label, at, ...(hint === undefined ? {} : { hint }) }
  if (words.choices !== undefined) {
    const choices = listChoices({ choices: words.choices })
    return mayBeNull ? (
      <OptionalChoiceCell
        {...cell}
        value={value as string | null}
        choices={choices}
        emptyLabel="not stated"
        onChange={onChange}
      />
    ) : (
      <ChoiceCell {...cell} value={value as string} choices={choices} onChange={onChange} />
    )
  }
  if (schema.safeParse(true).success) {
    return <ObservedCell {...cell} value={value as boolean | null} onChange={onChange} />
  }
  if (words.unit === 'mm') {
    return mayBeNull ? (
      <OptionalPlanLengthCell {...cell} value={value as number | null} onChange={onChange} />
    ) : (
      <PlanLengthCell {...cell} value={value as number} onChange={onChange} />
    )
  }
  if (words.unit === 'um' && mayBeNull) {
    return <OptionalThicknessCell {...cell} value={value as number | null} onChange={onChange} />
  }
  if (words.unit !== undefined || schema.safeParse(1).success) {
    const unit = words.unit === undefined ? {} : { unit: getUnitSymbol(words.unit) }
    return mayBeNull ? (
      <OptionalNumberCell {...cell} {...unit} value={value as number | null} onChange={onChange} />
    ) : (
      <NumberCell {...cell} {...unit} value={value as number} onChange={onChange} />
    )
  }
  return isLong ? (
    <LongTextCell {...cell} value={value as string} onChange={onChange} />
  ) : (
    <TextCell {...cell} value={value as string} onChange={onChange} />
  )
}
