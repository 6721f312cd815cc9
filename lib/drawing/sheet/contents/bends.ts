import {
  BEND_FIELDS,
  BEND_STATE_KEYS,
  type Bend,
  type Design,
  type FieldNode,
  getChoiceWord,
  listStatedStateKeys,
  NOT_STATED,
} from '@/lib/engine'
import { asEntered, digitsAsEntered } from '@/lib/engine/units'
import type { SheetColumn, SheetTable } from './model'
import { formatField, formatObserved, type SheetWords } from './words'

const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
  label,
  leastMm,
  growth,
  isNumeric,
})

/** Fields with a column or a note of their own; any other field of the dictionary gets a column at the end. */
const WITH_COLUMN: ReadonlySet<string> = new Set<keyof Bend>([
  'id',
  'name',
  'zoneId',
  'insideRadiusMm',
  'radiusToleranceMm',
  'angleDeg',
  'insideFace',
  'axisLengthMm',
  'use',
  'motion',
  'requiredCycles',
  'radiusHeldBy',
  'strainReliefAtTransition',
  'triedOnModel',
  'distanceToRigidMm',
  'flexTest',
  'note',
  ...BEND_STATE_KEYS,
])
const FURTHER_FIELDS = (Object.entries(BEND_FIELDS) as [keyof Bend, FieldNode][]).filter(
  ([key]) => !WITH_COLUMN.has(key),
)

/** In place of what a bend that stands still is not asked for. */
export const NOT_ASKED = '–'

/** `B1`: bends in the design's order. */
export function nameBends(design: Design): Map<string, string> {
  return new Map(design.bends.map(({ id }, index) => [id, `B${index + 1}`]))
}

/** Bend call-outs; null where the part is not bent. Remarks stand among the notes. */
export function makeBendTable(design: Design, words: SheetWords): SheetTable | null {
  if (design.bends.length === 0) return null
  const names = nameBends(design)
  const mm = words.planUnit
  const hasStates = design.bends.some((bend) => listStatedStateKeys(bend).length > 0)
  const { operatingMinDegC, operatingMaxDegC } = design.brief
  const temperature =
    operatingMinDegC === null || operatingMaxDegC === null
      ? NOT_STATED
      : `${digitsAsEntered(operatingMinDegC)} to ${digitsAsEntered(operatingMaxDegC)}`
  return {
    kind: 'table',
    id: 'bends',
    title: 'Bend call-outs',
    keyColumnCount: 1,
    columns: [
      column('Bend', 11),
      column(BEND_FIELDS.name.label, 30, 2),
      column(BEND_FIELDS.zoneId.label, 11),
      column(`${BEND_FIELDS.insideRadiusMm.label}, ${mm}`, 24, 0, true),
      column(BEND_FIELDS.angleDeg.label, 13, 0, true),
      column(BEND_FIELDS.insideFace.label, 15),
      column(`${BEND_FIELDS.axisLengthMm.label}, ${mm}`, 20, 0, true),
      column(BEND_FIELDS.use.label, 24, 1),
      ...(hasStates ? [column('Other states and loads', 34, 2)] : []),
      column(BEND_FIELDS.requiredCycles.head, 22, 0, true),
      column('Temperature, °C', 22),
      column(BEND_FIELDS.radiusHeldBy.label, 20, 1),
      column(`${BEND_FIELDS.distanceToRigidMm.head}, ${mm}`, 19, 0, true),
      column(BEND_FIELDS.strainReliefAtTransition.head, 17),
      column(BEND_FIELDS.triedOnModel.head, 16),
      ...FURTHER_FIELDS.map(([, words]) =>
        column(words.label, words.fields === undefined ? 20 : 34, words.fields === undefined ? 0 : 1),
      ),
    ],
    rows: design.bends.map((bend) => ({
      id: bend.id,
      cells: [
        names.get(bend.id) ?? '',
        bend.name,
        words.zone(bend.zoneId),
        `${words.plan(bend.insideRadiusMm)} ±${words.plan(bend.radiusToleranceMm)}`,
        asEntered(bend.angleDeg, 'deg'),
        getChoiceWord(BEND_FIELDS.insideFace, bend.insideFace),
        words.plan(bend.axisLengthMm),
        describeUse(bend),
        ...(hasStates ? [describeStates(bend, words)] : []),
        bend.requiredCycles === null
          ? bend.use === 'dynamic'
            ? NOT_STATED
            : NOT_ASKED
          : digitsAsEntered(bend.requiredCycles),
        temperature,
        getChoiceWord(BEND_FIELDS.radiusHeldBy, bend.radiusHeldBy),
        words.plan(bend.distanceToRigidMm),
        formatObserved(bend.strainReliefAtTransition),
        formatObserved(bend.triedOnModel),
        ...FURTHER_FIELDS.map(([key, node]) => formatField(bend[key], node, words)),
      ],
    })),
  }
}

function describeUse({ use, motion }: Bend): string {
  return use === 'dynamic'
    ? `dynamic, ${getChoiceWord(BEND_FIELDS.motion, motion)}`
    : getChoiceWord(BEND_FIELDS.use, use)
}

/** `flexes from radius 20 mm; pull along the part 3 N`: what is not stated is not there. */
function describeStates(bend: Bend, words: SheetWords): string {
  const stated = listStatedStateKeys(bend).map((key) => {
    const node: FieldNode = BEND_FIELDS[key]
    return `${node.label.charAt(0).toLowerCase()}${node.label.slice(1)} ${formatField(bend[key], node, words)}`
  })
  return stated.length === 0 ? '–' : stated.join('; ')
}

/** What a drawing for continuous flexing states beside the cycles; null where no bend is dynamic. */
export function makeFlexTestTable(design: Design, words: SheetWords): SheetTable | null {
  const bends = design.bends.filter(({ use }) => use === 'dynamic')
  if (bends.length === 0) return null
  const names = nameBends(design)
  const mm = words.planUnit
  return {
    kind: 'table',
    id: 'flex-test',
    title: 'Test of continuous flexing',
    keyColumnCount: 1,
    columns: [
      column('Bend', 11),
      column(BEND_FIELDS.requiredCycles.head, 22, 0, true),
      column('Cycles per minute', 20, 0, true),
      column(`Travel, ${mm}`, 17, 0, true),
      column(`Mandrel diameter, ${mm}`, 22, 0, true),
      column('Points of application', 40, 1),
    ],
    rows: bends.map(({ id, requiredCycles, flexTest }) => ({
      id,
      cells: [
        names.get(id) ?? '',
        requiredCycles === null ? NOT_STATED : digitsAsEntered(requiredCycles),
        flexTest.cyclesPerMinute === null ? NOT_STATED : digitsAsEntered(flexTest.cyclesPerMinute),
        words.plan(flexTest.travelMm),
        words.plan(flexTest.mandrelDiameterMm),
        flexTest.pointsOfApplication.trim() === '' ? NOT_STATED : flexTest.pointsOfApplication.trim(),
      ],
    })),
  }
}
