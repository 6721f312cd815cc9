'use client'

import {
  type Choice,
  ChoiceCell,
  ObservedCell,
  OptionalChoiceCell,
  OptionalNumberCell,
  OptionalPlanLengthCell,
  OptionalThicknessCell,
} from '../cells'
import { useDraft } from '../draft'
import type { FeatureColumn } from './feature-table'

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
    label: 'Layer',
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
  const { state } = useDraft()
  const choices = state.design.construction.layers
    .filter((layer) => layer.kind === 'conductor')
    .map((layer) => ({ value: layer.id, label: layer.name }))
  return (
    <ChoiceCell
      label="Layer"
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
      label: 'Nearest bend',
      render: (row, set, at) => <NearestBendChoice row={row} at={at('nearestBend', 'bendId')} set={set} />,
    },
    {
      key: 'nearestBendDistance',
      label: 'Distance',
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
  const { state } = useDraft()
  const choices = state.design.bends.map((bend) => ({ value: bend.id, label: bend.name }))
  return (
    <OptionalChoiceCell
      label="Nearest bend"
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

/** Column makers for the rows of one feature list, so that keys are checked against the row's own type. */
export function columnsOf<T extends { id: string; name: string }>() {
  return {
    optionalPlan: (key: KeysOf<T, number | null>, label: string) => optionalPlanColumn<T>(key, label),
    optionalThickness: (key: KeysOf<T, number | null>, label: string) => optionalThicknessColumn<T>(key, label),
    optionalNumber: (key: KeysOf<T, number | null>, label: string) => optionalNumberColumn<T>(key, label),
    observed: (key: KeysOf<T, boolean | null>, label: string) => observedColumn<T>(key, label),
    optionalChoice: <V extends string>(key: KeysOf<T, V | null>, label: string, choices: readonly Choice<V>[]) =>
      optionalChoiceColumn<T, V>(key, label, choices),
  }
}
