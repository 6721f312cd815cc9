import {
  type ConductorFeature,
  type Design,
  FEATURE_FIELDS,
  findNetClass,
  getChoiceWord,
  type NetClass,
  withNetClasses,
} from '@/lib/engine'
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

function makeLayerNamer(design: Design, words: SheetWords): (layerId: string) => string {
  const designations = nameConductorLayers(design.construction)
  return (layerId) => {
    const designation = designations.get(layerId)
    return designation === undefined ? words.layer(layerId) : formatDesignation(designation)
  }
}

const CLASS_FIELDS = FEATURE_FIELDS.netClasses.entry

/** What the classes of nets need; a dash where a class states no such need. */
export function makeNetClassTable(design: Design, words: SheetWords): SheetTable {
  const { netClasses } = design.features
  const nameLayer = makeLayerNamer(design, words)
  const number = (value: number | null) => (value === null ? '–' : digitsAsEntered(value))
  return {
    kind: 'table',
    id: 'net-classes',
    title: `${FEATURE_FIELDS.netClasses.label}: their needs hold for conductors that state none of their own`,
    keyColumnCount: 1,
    columns: [
      column('Name', 28, 1),
      column(withUnitInHead(CLASS_FIELDS.impedanceOhm.label, 'ohm'), 20, 0, true),
      column('Tolerance, line, reference, coupon', 36, 1),
      column(withUnitInHead(CLASS_FIELDS.crosstalkLimitPct.label, 'pct'), 26, 0, true),
      column(withUnitInHead(CLASS_FIELDS.riseTimePs.label, 'ps'), 20, 0, true),
    ],
    rows: netClasses.map((netClass) => ({
      id: netClass.id,
      cells: [
        netClass.name,
        number(netClass.impedanceOhm),
        describeTerms(netClass, nameLayer, null),
        number(netClass.crosstalkLimitPct),
        number(netClass.riseTimePs),
      ],
    })),
  }
}

/** Conductors with a stated impedance, current or voltage. A dash where there is no such need; open terms of an impedance say so. */
export function makeNeedTable(design: Design, words: SheetWords): SheetTable {
  const nameLayer = makeLayerNamer(design, words)
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
    rows: withNetClasses(design)
      .features.conductors.filter(hasNeed)
      .map((conductor) => ({
        id: conductor.id,
        cells: [
          conductor.name,
          nameLayer(conductor.layerId),
          words.plan(conductor.widthMm),
          words.plan(conductor.spaceMm),
          number(conductor.impedanceOhm),
          conductor.impedanceOhm === null
            ? '–'
            : describeTerms(conductor.impedance, nameLayer, findNetClass(design, conductor)),
          number(conductor.currentAmp),
          number(conductor.allowedRiseDegC),
          number(conductor.allowedDropVolt),
          number(conductor.voltageVolt),
        ],
      })),
  }
}

function describeTerms(
  {
    tolerancePct,
    kind,
    referenceLayerId,
    coupon,
  }: Pick<NetClass, 'tolerancePct' | 'kind' | 'referenceLayerId' | 'coupon'>,
  nameLayer: (layerId: string) => string,
  netClass: NetClass | null,
): string {
  return [
    tolerancePct === null ? 'tolerance not stated' : `±${digitsAsEntered(tolerancePct)} %`,
    `${TERMS.kind.label.toLowerCase()} ${getChoiceWord(TERMS.kind, kind)}`,
    `reference ${referenceLayerId === null ? 'not stated' : nameLayer(referenceLayerId)}`,
    `coupon ${formatObserved(coupon)}`,
    ...(netClass === null ? [] : [`net class ${netClass.name}`]),
  ].join('; ')
}
