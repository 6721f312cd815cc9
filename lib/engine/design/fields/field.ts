import type { Unit } from '../../units'
import type { SourcedNumber } from '../material'

/** What people call a field of the design, declared once: forms, grids, comparison, proposals, report, drawing and mail read it here. */
export interface FieldWords {
  /** On a form and at the head of a column: `Inside radius`. */
  readonly label: string
  /** At the head of a column where the label is too long for one. */
  readonly head?: string
  /** Within a sentence; without it the label with a small first letter. */
  readonly inText?: string
  readonly unit?: Unit
  readonly hint?: string
  /** As a fabricator who reads the drawing would ask it, where the drawing needs the field. */
  readonly question?: string
}

/** Values of a list, with their words. */
export type ChoiceWords<V extends string> = Readonly<Record<V, string>>

/**
 * The entry that a field of this type needs. Without one, or without a word for a value of its list, the project does not
 * compile.
 */
export type EntryOf<V> = [V] extends [SourcedNumber]
  ? FieldWords
  : V extends readonly (infer E)[]
    ? E extends object
      ? E extends readonly unknown[]
        ? FieldWords
        : FieldWords & { readonly entry: FieldsOf<E> }
      : [E] extends [string]
        ? FieldWords & { readonly choices?: ChoiceWords<E> }
        : FieldWords
    : V extends object
      ? FieldWords & { readonly fields: FieldsOf<V> }
      : [V] extends [string]
        ? string extends V
          ? FieldWords
          : FieldWords & { readonly choices: ChoiceWords<V> }
        : FieldWords

export type FieldsOf<T> = { readonly [K in keyof T]-?: EntryOf<NonNullable<T[K]>> }

/** Any entry, as functions that walk the dictionary see it. */
export interface FieldNode extends FieldWords {
  readonly choices?: Readonly<Record<string, string>>
  readonly fields?: Readonly<Record<string, FieldNode>>
  readonly entry?: Readonly<Record<string, FieldNode>>
}

const NAME = { label: 'Name' } as const
const ID = { label: 'Id' } as const

/** What every listed part has. */
export const NAMED_FIELDS = { id: ID, name: NAME } as const

export const NEAREST_BEND_FIELD = {
  label: 'Nearest bend',
  head: 'To the nearest bend',
  fields: { bendId: { label: 'Bend' }, distanceMm: { label: 'Distance', unit: 'mm' } },
} as const

export const LAYER_FIELD = { label: 'Layer' } as const
