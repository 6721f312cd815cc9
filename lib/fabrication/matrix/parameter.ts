import type { Design, Evaluation, Place, SourceKey } from '@/lib/engine'

/** Units of the dictionary; a choice has none. */
export type ParameterUnit = 'um' | 'mm' | 'count' | 'ratio' | 'deg' | 'pct' | 'degC' | 'ohm' | 'choice'

/** Which way lies trouble for the fabricator. */
export type ParameterDirection = 'smaller-is-harder' | 'larger-is-harder' | 'one-of'

export const PARAMETER_GROUPS = [
  'Copper and conductors',
  'Holes',
  'Outline',
  'Coverlay',
  'Stiffeners',
  'Bends',
  'Thickness and layers',
  'Materials',
  'Tolerances and delivery',
  'Finish and class',
] as const
export type ParameterGroup = (typeof PARAMETER_GROUPS)[number]

/** One value of the design that the matrix has something to say about. */
export interface LocatedValue {
  readonly value: number | string
  readonly place: Place
  /** Foil as bought of the conductor layer that the value lies on; null where it lies on none. */
  readonly foilUm: number | null
}

/** What the design says of a parameter. `absent` is a thing that the design does not have, `unknown` one it does not state. */
export type Measurement =
  | { readonly kind: 'values'; readonly values: readonly LocatedValue[] }
  | { readonly kind: 'absent'; readonly reason: string }
  | { readonly kind: 'unknown'; readonly reason: string }

export interface Measured {
  readonly design: Design
  readonly evaluation: Pick<Evaluation, 'zones'>
}

export interface Choice {
  readonly value: string
  readonly name: string
}

/** Where a beginner's figure comes from; nothing is decided by it. */
export interface ParameterHint {
  readonly comfortable: number
  readonly stretch: number
  readonly sourceKey: SourceKey
}

/** An entry of the dictionary of trade parameters. The key is stable: stored matrices name it. */
export interface TradeParameter {
  readonly key: string
  readonly group: ParameterGroup
  /** The trade's term, as it stands in a matrix: `Annular ring, minimum`. */
  readonly name: string
  /** As one asks a fabricator who does not go by the term. */
  readonly question: string
  readonly unit: ParameterUnit
  readonly direction: ParameterDirection
  /** What to do to the design so that it gets easier: `widen`, `enlarge`. */
  readonly verb: string
  /** What the part is for asks for it: no change of the design is proposed, as that would give up the need. */
  readonly isNeed?: boolean
  /** Known choices; with `isOpen` others are allowed too, such as a material called out by its own sheet. */
  readonly choices: readonly Choice[]
  readonly isOpen: boolean
  /** How the design's value is found, in words. */
  readonly measuredAs: string
  readonly hint: ParameterHint | null
  readonly measure: (measured: Measured) => Measurement
}

type NumberEntry = Omit<TradeParameter, 'choices' | 'isOpen' | 'hint'> & { readonly hint?: readonly [number, number] }

/** The hints are common practice without a published source: a place to begin, never a limit. */
export function numberParameter({ hint, ...entry }: NumberEntry): TradeParameter {
  return {
    ...entry,
    choices: [],
    isOpen: false,
    hint: hint === undefined ? null : { comfortable: hint[0], stretch: hint[1], sourceKey: 'commonPractice' },
  }
}

type ChoiceEntry = Omit<TradeParameter, 'unit' | 'direction' | 'hint' | 'isOpen' | 'verb'> & {
  readonly isOpen?: boolean
}

export function choiceParameter(entry: ChoiceEntry): TradeParameter {
  return { isOpen: false, ...entry, verb: 'choose', unit: 'choice', direction: 'one-of', hint: null }
}

export function makeChoices(names: Readonly<Record<string, string>>): readonly Choice[] {
  return Object.entries(names).map(([value, name]) => ({ value, name }))
}

/** The values, worst first; `absent` in the given words when the design has none of the kind. */
export function listValues(
  direction: ParameterDirection,
  values: readonly LocatedValue[],
  absent: string,
): Measurement {
  if (values.length === 0) return { kind: 'absent', reason: absent }
  if (direction === 'one-of') return { kind: 'values', values }
  const sign = direction === 'smaller-is-harder' ? 1 : -1
  return { kind: 'values', values: [...values].sort((a, b) => sign * (Number(a.value) - Number(b.value))) }
}

/**
 * Values of features of one kind, of which some may not be stated.
 * @param absent  when there is no such feature
 * @param unknown  when there are, and none states the value
 */
export function listStated<F>(
  direction: ParameterDirection,
  features: readonly F[],
  read: (feature: F) => LocatedValue | null,
  absent: string,
  unknown: string,
): Measurement {
  if (features.length === 0) return { kind: 'absent', reason: absent }
  const values = features.flatMap((feature) => read(feature) ?? [])
  return values.length === 0 ? { kind: 'unknown', reason: unknown } : listValues(direction, values, absent)
}

/** A value of one feature; null where the feature does not state it. */
export const at = (
  kind: Place['kind'],
  feature: { readonly id: string; readonly name: string },
  value: number | string | null,
): LocatedValue | null =>
  value === null ? null : { value, place: { kind, id: feature.id, name: feature.name }, foilUm: null }

/** Of sums and quotients, to far below anything that a limit is stated to. */
export const round = (value: number): number => Math.round(value * 1e6) / 1e6
