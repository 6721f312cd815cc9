import { type ConductorFeature, type Design, FEATURE_FIELDS, getChoiceWord } from '@/lib/engine'
import { digitsAsEntered, withUnitInHead } from '@/lib/engine/units'
import { formatDesignation, nameConductorLayers } from '../../layer-designations'
import type { SheetColumn, SheetTable } from './model'
import { formatObserved, type SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

const FIELDS = FEATURE_FIELDS.conductors.entry
const TERMS = FIELDS.impedance.fields

const hasNeed = ({ currentAmp, impedanceOhm, voltageVolt }: ConductorFeature) =>
  currentAmp !== null || impedanceOhm !== null || voltageVolt !== null

/** Conductors with a stated impedance, current or voltage. A dash where there is no such need; open terms of an impedance say so. */
export function makeNeedTable(design: Design, words: SheetWords): SheetTable {
  const designations = nameConductorLayers(design.construction)
  const nameLayer = (layerId: string) => {
    const designation = designations.get(layerId)
    return designation === undefined ? words.layer(layerId) : formatDesignation(designation)
  }
  const mm = words.planUnit
  const number = (value: number | null) => (value === null ? '–' : digitsAsEntered(value))
  return {
    kind: 'table',
    id: 'conductor-needs',
    title: 'Conductors with a stated impedance, current or voltage',
    keyColumnCount: 1,
    columns: [
      column('Name', 28, 1),
      column(FIELDS.layerId.label, 19),
      column(`${FIELDS.widthMm.label}, ${mm}`, 15, 0, true),
      column(`${FIELDS.spaceMm.label}, ${mm}`, 16, 0, true),
      column(withUnitInHead(FIELDS.impedanceOhm.label, 'ohm'), 20, 0, true),
      column('Tolerance, line, reference, coupon', 36, 1),
      column(withUnitInHead(FIELDS.currentAmp.label, 'amp'), 16, 0, true),
      column(withUnitInHead(FIELDS.allowedRiseDegC.label, 'degC'), 21, 0, true),
      column(withUnitInHead(FIELDS.allowedDropVolt.label, 'volt'), 18, 0, true),
      column(withUnitInHead(FIELDS.voltageVolt.label, 'volt'), 22, 0, true),
    ],
    rows: design.features.conductors.filter(hasNeed).map((conductor) => ({
      id: conductor.id,
      cells: [
        conductor.name,
        nameLayer(conductor.layerId),
        words.plan(conductor.widthMm),
        words.plan(conductor.spaceMm),
        number(conductor.impedanceOhm),
        conductor.impedanceOhm === null ? '–' : describeTerms(conductor.impedance, nameLayer),
        number(conductor.currentAmp),
        number(conductor.allowedRiseDegC),
        number(conductor.allowedDropVolt),
        number(conductor.voltageVolt),
      ],
    })),
  }
}

function describeTerms(
  { tolerancePct, kind, referenceLayerId, coupon }: ConductorFeature['impedance'],
  nameLayer: (layerId: string) => string,
): string {
  return [
    tolerancePct === null ? 'tolerance not stated' : `±${digitsAsEntered(tolerancePct)} %`,
    `${TERMS.kind.label.toLowerCase()} ${getChoiceWord(TERMS.kind, kind)}`,
    `reference ${referenceLayerId === null ? 'not stated' : nameLayer(referenceLayerId)}`,
    `coupon ${formatObserved(coupon)}`,
  ].join('; ')
}
