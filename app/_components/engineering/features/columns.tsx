'use client'

import { FEATURE_FIELDS, type FieldNode } from '@/lib/engine'
import { withUnitInHead } from '@/lib/engine/units'
import {
  type Choice,
  ChoiceCell,
  ObservedCell,
  OptionalChoiceCell,
  OptionalNumberCell,
  OptionalPlanLengthCell,
  OptionalThicknessCell,
} from '../cells'
import { useDraftChoices } from '../draft'
import type { FeatureColumn, FeatureListKey, FeatureOf } from './feature-table'

const LAYER_WORDS = FEATURE_FIELDS.conductors.entry.layerId
const NEAREST_WORDS = FEATURE_FIELDS.holes.entry.nearestBend

/** Keys of T whose values are exactly of type V. */
type KeysOf<T, V> = { [K in keyof T & string]: [T[K], V] extends [V, T[K]] ? K : never }[keyof T & string]

/** A computed key widens to an index signature, which Partial<T> then refuses; the key's own type makes it sound. */
function pick<T>(key: keyof T & string, value: T[keyof T & string]): Partial<T> {
  return { [key]: value } as Partial<T>
}

function optionalPlanColumn<T>(key: KeysOf<T, number | null>, label: string): FeatureColumn<T> {
  return {
    key,
    label,
    isNumeric: true,
    isPlanLength: true,
    render: (row, set, at) => (
      <OptionalPlanLengthCell
        label={label}
        at={at(key)}
        value={row[key] as number | null}
        onChange={(value) => set(pick(key, value as T[typeof key]))}
      />
    ),
  }
}

function optionalThicknessColumn<T>(key: KeysOf<T, number | null>, label: string): FeatureColumn<T> {
  return {
    key,
    label,
    isNumeric: true,
    render: (row, set, at) => (
      <OptionalThicknessCell
        label={label}
        at={at(key)}
        value={row[key] as number | null}
        onChange={(value) => set(pick(key, value as T[typeof key]))}
      />
    ),
  }
}

function optionalNumberColumn<T>(key: KeysOf<T, number | null>, label: string): FeatureColumn<T> {
  return {
    key,
    label,
    isNumeric: true,
    render: (row, set, at) => (
      <OptionalNumberCell
        label={label}
        at={at(key)}
        value={row[key] as number | null}
        onChange={(value) => set(pick(key, value as T[typeof key]))}
      />
    ),
  }
}

function observedColumn<T>(key: KeysOf<T, boolean | null>, label: string): FeatureColumn<T> {
  return {
    key,
    label,
    render: (row, set, at) => (
      <ObservedCell
        label={label}
        at={at(key)}
        value={row[key] as boolean | null}
        onChange={(value) => set(pick(key, value as T[typeof key]))}
      />
    ),
  }
}

function optionalChoiceColumn<T, V extends string>(
  key: KeysOf<T, V | null>,
  label: string,
  choices: readonly Choice<V>[],
): FeatureColumn<T> {
  return {
    key,
    label,
    render: (row, set, at) => (
      <OptionalChoiceCell<V>
        label={label}
        at={at(key)}
        value={row[key] as V | null}
        choices={choices}
        onChange={(value) => set(pick(key, value as T[typeof key]))}
      />
    ),
  }
}

/** The conductor layer that a feature is on. */
export function layerColumn<T extends { layerId: string }>(): FeatureColumn<T> {
  return {
    key: 'layerId',
    label: LAYER_WORDS.label,
    render: (row, set, at) => <LayerChoice row={row} at={at('layerId')} set={set} />,
  }
}

function LayerChoice<T extends { layerId: string }>({
  row,
  at,
  set,
}: {
  row: T
  at: Parameters<typeof ChoiceCell>[0]['at']
  set: (change: Partial<T>) => void
}) {
  const { construction } = useDraftChoices()
  const choices = construction.layers
    .filter((layer) => layer.kind === 'conductor')
    .map((layer) => ({ value: layer.id, label: layer.name }))
  return (
    <ChoiceCell
      label={LAYER_WORDS.label}
      at={at}
      value={row.layerId}
      choices={choices}
      onChange={(layerId) => set({ layerId } as Partial<T>)}
    />
  )
}

interface NearBend {
  readonly nearestBend: { bendId: string; distanceMm: number | null } | null
}

/** The nearest bend and the distance to it, which are known together or not at all. */
export function nearestBendColumns<T extends NearBend>(): FeatureColumn<T>[] {
  return [
    {
      key: 'nearestBend',
      label: NEAREST_WORDS.label,
      render: (row, set, at) => <NearestBendChoice row={row} at={at('nearestBend', 'bendId')} set={set} />,
    },
    {
      key: 'nearestBendDistance',
      label: NEAREST_WORDS.fields.distanceMm.label,
      isNumeric: true,
      isPlanLength: true,
      render: (row, set, at) => {
        const near = row.nearestBend
        if (near === null) return <span className="muted">–</span>
        return (
          <OptionalPlanLengthCell
            label="Distance to the nearest bend"
            at={at('nearestBend', 'distanceMm')}
            value={near.distanceMm}
            onChange={(distanceMm) => set({ nearestBend: { ...near, distanceMm } } as Partial<T>)}
          />
        )
      },
    },
  ]
}

function NearestBendChoice<T extends NearBend>({
  row,
  at,
  set,
}: {
  row: T
  at: Parameters<typeof ChoiceCell>[0]['at']
  set: (change: Partial<T>) => void
}) {
  const { bends } = useDraftChoices()
  const choices = bends.map((bend) => ({ value: bend.id, label: bend.name }))
  return (
    <OptionalChoiceCell
      label={NEAREST_WORDS.label}
      at={at}
      value={row.nearestBend?.bendId ?? null}
      choices={choices}
      onChange={(bendId) =>
        set({
          // A distance that was typed belongs to the bend that it was typed for.
          nearestBend: bendId === null ? null : { bendId, distanceMm: null },
        } as Partial<T>)
      }
    />
  )
}

/** Column makers for the rows of one feature list: keys are checked against the row's own type, words come from the dictionary. */
export function columnsOf<L extends FeatureListKey>(list: L) {
  type T = FeatureOf<L>
  const words: Readonly<Record<string, FieldNode>> = FEATURE_FIELDS[list].entry
  const labelOf = (key: string) => words[key]?.label ?? key
  return {
    optionalPlan: (key: KeysOf<T, number | null>) => optionalPlanColumn<T>(key, labelOf(key)),
    optionalThickness: (key: KeysOf<T, number | null>) => optionalThicknessColumn<T>(key, labelOf(key)),
    optionalNumber: (key: KeysOf<T, number | null>) =>
      optionalNumberColumn<T>(key, withUnitInHead(labelOf(key), words[key]?.unit)),
    observed: (key: KeysOf<T, boolean | null>) => observedColumn<T>(key, labelOf(key)),
    optionalChoice: <V extends string>(key: KeysOf<T, V | null>, choices: readonly Choice<V>[]) =>
      optionalChoiceColumn<T, V>(key, labelOf(key), choices),
  }
}
