'use client'

import { useDraft } from '../draft'
import { columnsOf, layerColumn, nearestBendColumns } from './columns'
import { type FeatureOf, FeatureTable } from './feature-table'

/** First layer of a kind, for new rows; empty where there is none, which the design's check then reports. */
function useFirstLayerId(kind: 'conductor' | 'stiffener'): string {
  const { state } = useDraft()
  return state.design.construction.layers.find((layer) => layer.kind === kind)?.id ?? ''
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
  const layerId = useFirstLayerId('conductor')
  return (
    <FeatureTable
      listKey="conductors"
      title="Conductors"
      placeKind="conductor"
      singular="conductor"
      idPrefix="conductor"
      emptyText="No conductors entered: width, space, current and bend crossings are not judged."
      makeRow={(named) => ({
        ...named,
        layerId,
        widthMm: 0.1,
        spaceMm: null,
        lengthMm: null,
        currentAmp: null,
        allowedRiseDegC: null,
        allowedDropVolt: null,
        impedanceOhm: null,
        crossings: [],
      })}
      columns={[
        layerColumn<ConductorRow>('conductor'),
        column.plan('widthMm', 'Width'),
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
        plated: true,
        wallPlatingUm: null,
        drillMm: 0.3,
        landMm: null,
        nearestBend: null,
        transitionDistanceMm: null,
      })}
      columns={[
        column.tick('plated', 'Plated'),
        column.plan('drillMm', 'Drill'),
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
  const layerId = useFirstLayerId('conductor')
  return (
    <FeatureTable
      listKey="pads"
      title="Pads"
      placeKind="pad"
      singular="pad"
      idPrefix="pad"
      emptyText="No pads entered."
      makeRow={(named) => ({
        ...named,
        layerId,
        hasPlatedHole: false,
        anchorCount: null,
        coverlayCaptureMm: null,
        teardrop: null,
      })}
      columns={[
        layerColumn<PadRow>('conductor'),
        column.tick('hasPlatedHole', 'Plated hole'),
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
      makeRow={(named) => ({ ...named, insideRadiusMm: 0.8, tearStop: null })}
      columns={[column.plan('insideRadiusMm', 'Radius'), column.observed('tearStop', 'Tear stop')]}
    />
  )
}

export function WidthStepFeatures() {
  const column = columnsOf<WidthStepRow>()
  const layerId = useFirstLayerId('conductor')
  return (
    <FeatureTable
      listKey="widthSteps"
      title="Changes of conductor width"
      placeKind="width-step"
      singular="width change"
      idPrefix="step"
      emptyText="No changes of width entered."
      makeRow={(named) => ({ ...named, layerId, wideMm: 0.3, narrowMm: 0.1, taperLengthMm: 0 })}
      columns={[
        layerColumn<WidthStepRow>('conductor'),
        column.plan('wideMm', 'Wide side'),
        column.plan('narrowMm', 'Narrow side'),
        column.plan('taperLengthMm', 'Over a length of'),
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
      makeRow={(named) => ({ ...named, method: null, openingMm: 1, webMm: null, nearestBend: null })}
      columns={[
        column.optionalChoice('method', 'Made by', [
          { value: 'drill', label: 'drilling' },
          { value: 'punch', label: 'punching' },
          { value: 'laser', label: 'laser' },
        ]),
        column.plan('openingMm', 'Opening'),
        column.optionalPlan('webMm', 'Narrowest web'),
        ...nearestBendColumns<CoverlayOpeningRow>(),
      ]}
    />
  )
}

export function StiffenerFeatures() {
  const column = columnsOf<StiffenerRow>()
  const layerId = useFirstLayerId('stiffener')
  return (
    <FeatureTable
      listKey="stiffeners"
      title="Stiffeners"
      placeKind="stiffener"
      singular="stiffener"
      idPrefix="stiffener"
      emptyText="No stiffeners entered."
      makeRow={(named) => ({
        ...named,
        layerId,
        purpose: null,
        coverlayOverlapMm: null,
        nearestBend: null,
        onDrawing: null,
      })}
      columns={[
        layerColumn<StiffenerRow>('stiffener'),
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
      makeRow={(named) => ({ ...named, endReliefDiameterMm: 0, widthMm: 0 })}
      columns={[column.plan('endReliefDiameterMm', 'Relief at the end, diameter'), column.plan('widthMm', 'Width')]}
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
