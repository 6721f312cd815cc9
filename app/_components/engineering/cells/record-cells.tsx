'use client'

import type { FieldNode } from '@/lib/engine'
import { FieldCell, type FieldSchema, type FieldValue } from './field-cell'
import type { Place } from './place'

interface RecordCellsProps<T> {
  /** Words of the record's fields, in the order of the form. */
  readonly fields: { readonly [K in keyof T]: FieldNode }
  readonly shape: { readonly [K in keyof T]: FieldSchema }
  readonly value: T
  readonly at: (...field: string[]) => Place
  /** Key of the edit, and what becomes of the record. */
  readonly onChange: (key: string, change: (present: T) => T) => void
  /** Fields that get a line of their own. */
  readonly longTexts?: readonly string[]
}

/** The inputs of one record of the design, by its entries in the dictionary and its schema. */
export function RecordCells<T extends object>({
  fields,
  shape,
  value,
  at,
  onChange,
  longTexts = [],
}: RecordCellsProps<T>) {
  return (Object.keys(fields) as (keyof T & string)[]).map((name) => {
    const isLong = longTexts.includes(name)
    const cell = (
      <FieldCell
        key={name}
        words={fields[name]}
        schema={shape[name]}
        at={at(name)}
        value={value[name] as FieldValue}
        isLong={isLong}
        onChange={(changed) => onChange(at(name).key, (present) => ({ ...present, [name]: changed }))}
      />
    )
    return isLong ? (
      <div key={name} className="field-wide">
        {cell}
      </div>
    ) : (
      cell
    )
  })
}
