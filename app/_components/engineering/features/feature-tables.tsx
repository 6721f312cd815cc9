'use client'

import { FEATURE_FIELDS, listChoices, listStiffeners, UNKNOWN_IMPEDANCE } from '@/lib/engine'
import { makeBlankFeature, useDraftChoices } from '../draft'
import { columnsOf, layerColumn, nearestBendColumns } from './columns'
import { type FeatureOf, FeatureTable } from './feature-table'

/**
 * The layer that a new row begins on: the first conductor layer; empty where there is none, which the design's check then
 * reports. Where there are several the row is marked as assumed.
 */
function useFirstConductorLayer(): { readonly layerId: string; readonly assumedFields: readonly 'layerId'[] } {
  const { construction } = useDraftChoices()
  const [first, ...others] = construction.layers.filter(({ kind }) => kind === 'conductor')
  return { layerId: first?.id ?? '', assumedFields: others.length > 0 ? ['layerId'] : [] }
}

type ConductorRow = FeatureOf<'conductors'>
type HoleRow = FeatureOf<'holes'>
type PadRow = FeatureOf<'pads'>
type WidthStepRow = FeatureOf<'widthSteps'>
type CoverlayOpeningRow = FeatureOf<'coverlayOpenings'>
type StiffenerRow = FeatureOf<'stiffeners'>
type ComponentRow = FeatureOf<'components'>

/** The conductor layers, for a choice. */
function useConductorLayerChoices() {
  const { construction } = useDraftChoices()
  return construction.layers.flatMap(({ id, name, kind }) => (kind === 'conductor' ? [{ value: id, label: name }] : []))
}

export function NetClassFeatures() {
  const column = columnsOf('netClasses')
  const layerChoices = useConductorLayerChoices()
  return (
    <FeatureTable
      listKey="netClasses"
      title={FEATURE_FIELDS.netClasses.label}
      placeKind={null}
      singular="net class"
      idPrefix="net-class"
      emptyText="No net classes entered: each conductor states its own needs."
      makeRow={(named) => ({
        ...named,
        impedanceOhm: null,
        tolerancePct: null,
        kind: null,
        referenceLayerId: null,
        coupon: null,
        crosstalkLimitPct: null,
        riseTimePs: null,
      })}
      columns={[
        column.optionalNumber('impedanceOhm'),
        column.optionalNumber('tolerancePct'),
        column.optionalChoice('kind', listChoices(FEATURE_FIELDS.netClasses.entry.kind)),
        column.optionalChoice('referenceLayerId', layerChoices),
        column.observed('coupon'),
        column.optionalNumber('crosstalkLimitPct'),
        column.optionalNumber('riseTimePs'),
      ]}
    />
  )
}

export function ConductorFeatures() {
  const column = columnsOf('conductors')
  const { layerId, assumedFields } = useFirstConductorLayer()
  const netClasses = useDraftChoices().netClasses.map(({ id, name }) => ({ value: id, label: name }))
  return (
    <FeatureTable
      listKey="conductors"
      title={FEATURE_FIELDS.conductors.label}
      placeKind="conductor"
      singular="conductor"
      idPrefix="conductor"
      assumedFields={assumedFields}
      emptyText="No conductors entered: width, space, current and bend crossings are not checked."
      makeRow={(named) => ({
        ...named,
        layerId,
        widthMm: null,
        spaceMm: null,
        lengthMm: null,
        currentAmp: null,
        allowedRiseDegC: null,
        allowedDropVolt: null,
        returnAsLong: null,
        carriesPower: null,
        netClassId: null,
        impedanceOhm: null,
        impedance: UNKNOWN_IMPEDANCE,
        voltageVolt: null,
        isCovered: null,
        frequencyMhz: null,
        crossings: [],
      })}
      columns={[
        layerColumn<ConductorRow>(),
        column.optionalPlan('widthMm'),
        column.optionalPlan('spaceMm'),
        column.optionalPlan('lengthMm'),
        column.optionalNumber('currentAmp'),
        column.optionalNumber('allowedRiseDegC'),
        column.optionalNumber('allowedDropVolt'),
        column.observed('returnAsLong'),
        column.observed('carriesPower'),
        ...(netClasses.length === 0 ? [] : [column.optionalChoice('netClassId', netClasses)]),
        column.optionalNumber('impedanceOhm'),
        column.optionalNumber('voltageVolt'),
        column.observed('isCovered'),
        column.optionalNumber('frequencyMhz'),
      ]}
    />
  )
}

function useZoneChoices() {
  const { construction } = useDraftChoices()
  return construction.zones.map(({ id, name }) => ({ value: id, label: name }))
}

export function HoleFeatures() {
  const column = columnsOf('holes')
  const layerChoices = useConductorLayerChoices()
  const zoneChoices = useZoneChoices()
  return (
    <FeatureTable
      listKey="holes"
      title={FEATURE_FIELDS.holes.label}
      placeKind="hole"
      singular="hole"
      idPrefix="hole"
      emptyText="No holes entered."
      makeRow={(named) => makeBlankFeature('holes', named)}
      columns={[
        column.optionalChoice('zoneId', zoneChoices),
        column.observed('plated'),
        column.optionalPlan('drillMm'),
        column.optionalPlan('landMm'),
        column.optionalThickness('wallPlatingUm'),
        column.optionalChoice('fromLayerId', layerChoices),
        column.optionalChoice('toLayerId', layerChoices),
        column.optionalChoice('filling', listChoices(FEATURE_FIELDS.holes.entry.filling)),
        ...nearestBendColumns<HoleRow>(),
        column.observed('clearOfBends'),
        column.optionalPlan('transitionDistanceMm'),
        column.optionalPlan('stiffenerEdgeDistanceMm'),
        column.optionalPlan('stiffenerHoleMm'),
      ]}
    />
  )
}

export function PadFeatures() {
  const column = columnsOf('pads')
  const zoneChoices = useZoneChoices()
  const { layerId, assumedFields } = useFirstConductorLayer()
  return (
    <FeatureTable
      listKey="pads"
      title={FEATURE_FIELDS.pads.label}
      placeKind="pad"
      singular="pad"
      idPrefix="pad"
      assumedFields={assumedFields}
      emptyText="No pads entered."
      makeRow={(named) => ({
        ...named,
        layerId,
        zoneId: null,
        hasPlatedHole: null,
        anchorCount: null,
        coverlayCaptureMm: null,
        teardrop: null,
        nearestBend: null,
        clearOfBends: null,
      })}
      columns={[
        layerColumn<PadRow>(),
        column.optionalChoice('zoneId', zoneChoices),
        column.observed('hasPlatedHole'),
        column.optionalNumber('anchorCount'),
        column.optionalPlan('coverlayCaptureMm'),
        column.observed('teardrop'),
        ...nearestBendColumns<PadRow>(),
        column.observed('clearOfBends'),
      ]}
    />
  )
}

export function CornerFeatures() {
  const column = columnsOf('outlineCorners')
  return (
    <FeatureTable
      listKey="outlineCorners"
      title={FEATURE_FIELDS.outlineCorners.label}
      placeKind="corner"
      singular="corner"
      idPrefix="corner"
      emptyText="No inside corners entered."
      makeRow={(named) => ({ ...named, insideRadiusMm: null, bordersFlex: null, isPulled: null, tearStop: null })}
      columns={[
        column.optionalPlan('insideRadiusMm'),
        column.observed('bordersFlex'),
        column.observed('isPulled'),
        column.observed('tearStop'),
      ]}
    />
  )
}

export function WidthStepFeatures() {
  const column = columnsOf('widthSteps')
  const { layerId, assumedFields } = useFirstConductorLayer()
  return (
    <FeatureTable
      listKey="widthSteps"
      title={FEATURE_FIELDS.widthSteps.label}
      placeKind="width-step"
      singular="width change"
      idPrefix="step"
      assumedFields={assumedFields}
      emptyText="No changes of width entered."
      makeRow={(named) => ({
        ...named,
        layerId,
        wideMm: null,
        narrowMm: null,
        taperLengthMm: null,
        nearestBend: null,
        clearOfBends: null,
      })}
      columns={[
        layerColumn<WidthStepRow>(),
        column.optionalPlan('wideMm'),
        column.optionalPlan('narrowMm'),
        column.optionalPlan('taperLengthMm'),
        ...nearestBendColumns<WidthStepRow>(),
        column.observed('clearOfBends'),
      ]}
    />
  )
}

export function CoverlayOpeningFeatures() {
  const column = columnsOf('coverlayOpenings')
  return (
    <FeatureTable
      listKey="coverlayOpenings"
      title={FEATURE_FIELDS.coverlayOpenings.label}
      placeKind="coverlay-opening"
      singular="opening"
      idPrefix="opening"
      emptyText="No coverlay openings entered."
      makeRow={(named) => makeBlankFeature('coverlayOpenings', named)}
      columns={[
        column.optionalChoice('method', listChoices(FEATURE_FIELDS.coverlayOpenings.entry.method)),
        column.optionalPlan('openingMm'),
        column.optionalPlan('webMm'),
        column.optionalPlan('landMm'),
        column.optionalPlan('neededOpenMm'),
        ...nearestBendColumns<CoverlayOpeningRow>(),
        column.observed('clearOfBends'),
      ]}
    />
  )
}

/** One row for each stiffener layer of the construction, which says that it is there; here is what the layer cannot say. */
export function StiffenerFeatures() {
  const column = columnsOf('stiffeners')
  return (
    <FeatureTable
      listKey="stiffeners"
      title={FEATURE_FIELDS.stiffeners.label}
      placeKind="stiffener"
      singular="stiffener"
      idPrefix="stiffener"
      emptyText="The construction has no stiffener layer. Add the layer there first, then its details here."
      listRows={listStiffeners}
      makeRow={(named) => makeBlankFeature('stiffeners', named)}
      columns={[
        {
          key: 'layerId',
          label: FEATURE_FIELDS.stiffeners.entry.layerId.label,
          render: (row) => <LayerName layerId={row.layerId} />,
        },
        column.optionalChoice('purpose', listChoices(FEATURE_FIELDS.stiffeners.entry.purpose)),
        column.optionalPlan('coverlayOverlapMm'),
        ...nearestBendColumns<StiffenerRow>(),
        column.optionalChoice('bonded', listChoices(FEATURE_FIELDS.stiffeners.entry.bonded)),
        column.optionalNumber('heatRatingDegC'),
        column.observed('onDrawing'),
      ]}
    />
  )
}

function LayerName({ layerId }: { layerId: string }) {
  const { construction } = useDraftChoices()
  return <>{construction.layers.find(({ id }) => id === layerId)?.name ?? 'no such layer'}</>
}

export function SlitFeatures() {
  const column = columnsOf('slits')
  return (
    <FeatureTable
      listKey="slits"
      title={FEATURE_FIELDS.slits.label}
      placeKind="slit"
      singular="slit"
      idPrefix="slit"
      emptyText="No slits or cut-outs entered."
      makeRow={(named) => ({ ...named, endReliefDiameterMm: null, widthMm: null, tearStop: null })}
      columns={[
        column.optionalPlan('endReliefDiameterMm'),
        column.optionalPlan('widthMm'),
        column.observed('tearStop'),
      ]}
    />
  )
}

/** What must lie well to what, and what the fabricator holds. */
export function RegistrationFeatures() {
  const column = columnsOf('registrations')
  return (
    <FeatureTable
      listKey="registrations"
      title={FEATURE_FIELDS.registrations.label}
      placeKind="registration"
      singular="pair"
      idPrefix="pair"
      emptyText="No pairs entered: what the fabricator holds between two features is not compared with what works."
      makeRow={(named) => ({ ...named, neededMm: null, heldMm: null })}
      columns={[column.optionalPlan('neededMm'), column.optionalPlan('heldMm')]}
    />
  )
}

export function ComponentFeatures() {
  const column = columnsOf('components')
  const zoneChoices = useZoneChoices()
  return (
    <FeatureTable
      listKey="components"
      title={FEATURE_FIELDS.components.label}
      placeKind="component"
      singular="component"
      idPrefix="component"
      emptyText="No components entered."
      makeRow={(named) => makeBlankFeature('components', named)}
      columns={[
        ...nearestBendColumns<ComponentRow>(),
        column.observed('clearOfBends'),
        column.optionalPlan('transitionDistanceMm'),
        column.optionalChoice('zoneId', zoneChoices),
        column.optionalChoice('side', listChoices(FEATURE_FIELDS.components.entry.side)),
        column.observed('overStiffener'),
      ]}
    />
  )
}
