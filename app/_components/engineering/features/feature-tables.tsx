'use client'

import { listStiffeners } from '@/lib/engine'
import { useDraft } from '../draft'
import { columnsOf, layerColumn, nearestBendColumns } from './columns'
import { type FeatureOf, FeatureTable } from './feature-table'

/**
 * The layer that a new row begins on: the first conductor layer; empty where there is none, which the design's check then
 * reports. Where there are several the row is marked as assumed.
 */
function useFirstConductorLayer(): { readonly layerId: string; readonly assumedFields: readonly 'layerId'[] } {
  const { state } = useDraft()
  const [first, ...others] = state.design.construction.layers.filter(({ kind }) => kind === 'conductor')
  return { layerId: first?.id ?? '', assumedFields: others.length > 0 ? ['layerId'] : [] }
}

type ConductorRow = FeatureOf<'conductors'>
type HoleRow = FeatureOf<'holes'>
type PadRow = FeatureOf<'pads'>
type OutlineCornerRow = FeatureOf<'outlineCorners'>
type WidthStepRow = FeatureOf<'widthSteps'>
type CoverlayOpeningRow = FeatureOf<'coverlayOpenings'>
type StiffenerRow = FeatureOf<'stiffeners'>
type SlitRow = FeatureOf<'slits'>
type ComponentRow = FeatureOf<'components'>

export function ConductorFeatures() {
  const column = columnsOf<ConductorRow>()
  const { layerId, assumedFields } = useFirstConductorLayer()
  return (
    <FeatureTable
      listKey="conductors"
      title="Conductors"
      placeKind="conductor"
      singular="conductor"
      idPrefix="conductor"
      assumedFields={assumedFields}
      emptyText="No conductors entered: width, space, current and bend crossings are not judged."
      makeRow={(named) => ({
        ...named,
        layerId,
        widthMm: null,
        spaceMm: null,
        lengthMm: null,
        currentAmp: null,
        allowedRiseDegC: null,
        allowedDropVolt: null,
        impedanceOhm: null,
        crossings: [],
      })}
      columns={[
        layerColumn<ConductorRow>(),
        column.optionalPlan('widthMm', 'Width'),
        column.optionalPlan('spaceMm', 'Space'),
        column.optionalPlan('lengthMm', 'Length'),
        column.optionalNumber('currentAmp', 'Current, A'),
        column.optionalNumber('allowedRiseDegC', 'Allowed rise, °C'),
        column.optionalNumber('allowedDropVolt', 'Allowed drop, V'),
        column.optionalNumber('impedanceOhm', 'Impedance, Ω'),
      ]}
    />
  )
}

export function HoleFeatures() {
  const column = columnsOf<HoleRow>()
  return (
    <FeatureTable
      listKey="holes"
      title="Holes"
      placeKind="hole"
      singular="hole"
      idPrefix="hole"
      emptyText="No holes entered."
      makeRow={(named) => ({
        ...named,
        plated: null,
        wallPlatingUm: null,
        drillMm: null,
        landMm: null,
        nearestBend: null,
        transitionDistanceMm: null,
      })}
      columns={[
        column.observed('plated', 'Plated'),
        column.optionalPlan('drillMm', 'Drill'),
        column.optionalPlan('landMm', 'Land'),
        column.optionalThickness('wallPlatingUm', 'Wall plating, thickness'),
        ...nearestBendColumns<HoleRow>(),
        column.optionalPlan('transitionDistanceMm', 'To the rigid-to-flex transition'),
      ]}
    />
  )
}

export function PadFeatures() {
  const column = columnsOf<PadRow>()
  const { layerId, assumedFields } = useFirstConductorLayer()
  return (
    <FeatureTable
      listKey="pads"
      title="Pads"
      placeKind="pad"
      singular="pad"
      idPrefix="pad"
      assumedFields={assumedFields}
      emptyText="No pads entered."
      makeRow={(named) => ({
        ...named,
        layerId,
        hasPlatedHole: null,
        anchorCount: null,
        coverlayCaptureMm: null,
        teardrop: null,
      })}
      columns={[
        layerColumn<PadRow>(),
        column.observed('hasPlatedHole', 'Plated hole'),
        column.optionalNumber('anchorCount', 'Anchors'),
        column.optionalPlan('coverlayCaptureMm', 'Coverlay over rim'),
        column.observed('teardrop', 'Teardrop'),
      ]}
    />
  )
}

export function CornerFeatures() {
  const column = columnsOf<OutlineCornerRow>()
  return (
    <FeatureTable
      listKey="outlineCorners"
      title="Inside corners of the outline"
      placeKind="corner"
      singular="corner"
      idPrefix="corner"
      emptyText="No inside corners entered."
      makeRow={(named) => ({ ...named, insideRadiusMm: null, tearStop: null })}
      columns={[column.optionalPlan('insideRadiusMm', 'Radius'), column.observed('tearStop', 'Tear stop')]}
    />
  )
}

export function WidthStepFeatures() {
  const column = columnsOf<WidthStepRow>()
  const { layerId, assumedFields } = useFirstConductorLayer()
  return (
    <FeatureTable
      listKey="widthSteps"
      title="Changes of conductor width"
      placeKind="width-step"
      singular="width change"
      idPrefix="step"
      assumedFields={assumedFields}
      emptyText="No changes of width entered."
      makeRow={(named) => ({ ...named, layerId, wideMm: null, narrowMm: null, taperLengthMm: null })}
      columns={[
        layerColumn<WidthStepRow>(),
        column.optionalPlan('wideMm', 'Wide side'),
        column.optionalPlan('narrowMm', 'Narrow side'),
        column.optionalPlan('taperLengthMm', 'Over a length of'),
      ]}
    />
  )
}

export function CoverlayOpeningFeatures() {
  const column = columnsOf<CoverlayOpeningRow>()
  return (
    <FeatureTable
      listKey="coverlayOpenings"
      title="Coverlay openings"
      placeKind="coverlay-opening"
      singular="opening"
      idPrefix="opening"
      emptyText="No coverlay openings entered."
      makeRow={(named) => ({ ...named, method: null, openingMm: null, webMm: null, nearestBend: null })}
      columns={[
        column.optionalChoice('method', 'Made by', [
          { value: 'drill', label: 'drilling' },
          { value: 'punch', label: 'punching' },
          { value: 'laser', label: 'laser' },
        ]),
        column.optionalPlan('openingMm', 'Opening'),
        column.optionalPlan('webMm', 'Narrowest web'),
        ...nearestBendColumns<CoverlayOpeningRow>(),
      ]}
    />
  )
}

/** One row for each stiffener layer of the construction, which says that it is there; here is what the layer cannot say. */
export function StiffenerFeatures() {
  const column = columnsOf<StiffenerRow>()
  return (
    <FeatureTable
      listKey="stiffeners"
      title="Stiffeners"
      placeKind="stiffener"
      singular="stiffener"
      idPrefix="stiffener"
      emptyText="The construction has no stiffener layer. A stiffener is added there, and its details here."
      listRows={listStiffeners}
      makeRow={(named) => ({
        ...named,
        layerId: '',
        purpose: null,
        coverlayOverlapMm: null,
        nearestBend: null,
        onDrawing: null,
      })}
      columns={[
        {
          key: 'layerId',
          label: 'Layer',
          render: (row) => <LayerName layerId={row.layerId} />,
        },
        column.optionalChoice('purpose', 'For', [
          { value: 'connector', label: 'a connector' },
          { value: 'components', label: 'components' },
          { value: 'thickness', label: 'thickness' },
          { value: 'handling', label: 'handling' },
        ]),
        column.optionalPlan('coverlayOverlapMm', 'Past the coverlay end'),
        ...nearestBendColumns<StiffenerRow>(),
        column.observed('onDrawing', 'On the drawing'),
      ]}
    />
  )
}

function LayerName({ layerId }: { layerId: string }) {
  const { state } = useDraft()
  return <>{state.design.construction.layers.find(({ id }) => id === layerId)?.name ?? 'no such layer'}</>
}

export function SlitFeatures() {
  const column = columnsOf<SlitRow>()
  return (
    <FeatureTable
      listKey="slits"
      title="Slits and cut-outs"
      placeKind="slit"
      singular="slit"
      idPrefix="slit"
      emptyText="No slits or cut-outs entered."
      makeRow={(named) => ({ ...named, endReliefDiameterMm: null, widthMm: null })}
      columns={[
        column.optionalPlan('endReliefDiameterMm', 'Relief at the end, diameter'),
        column.optionalPlan('widthMm', 'Width'),
      ]}
    />
  )
}

export function ComponentFeatures() {
  const column = columnsOf<ComponentRow>()
  return (
    <FeatureTable
      listKey="components"
      title="Components"
      placeKind="component"
      singular="component"
      idPrefix="component"
      emptyText="No components entered."
      makeRow={(named) => ({ ...named, nearestBend: null, transitionDistanceMm: null, overStiffener: null })}
      columns={[
        ...nearestBendColumns<ComponentRow>(),
        column.optionalPlan('transitionDistanceMm', 'To the rigid-to-flex transition'),
        column.observed('overStiffener', 'Over a stiffener'),
      ]}
    />
  )
}
