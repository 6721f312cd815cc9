'use client'

import { type Control, type FieldPath, type FieldValues, useController } from 'react-hook-form'
import { SelectField } from '@/app/_components/ui/select-field'
import { listKindFields } from '@/lib/engine'

interface KindSelectProps<TIn extends FieldValues, TOut> {
  control: Control<TIn, unknown, TOut>
  name: FieldPath<TIn>
  /** The field whose entries are narrowed. */
  pattern: string
}

const EVERY = 'every'

/** Of which entries of a list a rule speaks: every one, or those of one kind. Nothing to choose outside of lists. */
export function KindSelect<TIn extends FieldValues, TOut>({ control, name, pattern }: KindSelectProps<TIn, TOut>) {
  const { field, fieldState } = useController({ control, name })
  const kinds = listKindFields(pattern).flatMap(({ field: kind, label, choices }) =>
    Object.entries(choices).map(([value, word]) => ({ value: `${kind}=${value}`, label: `${label}: ${word}` })),
  )
  if (kinds.length === 0) return null
  const where = field.value as { field: string; value: string } | null
  return (
    <SelectField
      label="Of which entries"
      options={[{ value: EVERY, label: 'every entry' }, ...kinds]}
      value={where === null ? EVERY : `${where.field}=${where.value}`}
      onChange={(chosen) => {
        const [kind = '', value = ''] = String(chosen).split('=')
        field.onChange(chosen === EVERY || chosen === null ? null : { field: kind, value })
      }}
      error={fieldState.error?.message}
    />
  )
}
