import { listLibraryMaterials } from '@/lib/engine'
import {
  FLEX_TEST_KINDS,
  FLEX_TEST_MOTIONS,
  FLEX_TEST_RESULTS,
  type FlexTestRow,
  findFlexTestIssues,
  findFlexTestRowIssues,
  flexTestRowKey,
  flexTestRowSchema,
} from '@/lib/engine/flex-tests'
import { choiceColumn, type FabricationTable, numberColumn, textColumn } from './columns'

const FOILS = listLibraryMaterials()
  .filter(({ kind }) => kind === 'copper-foil')
  .map(({ id }) => id)

/** One specimen in a row, so that a laboratory's list can be pasted. */
export const FLEX_TEST_TABLE: FabricationTable<FlexTestRow> = {
  columns: [
    textColumn({
      key: 'set',
      title: 'Set',
      hint: 'one name for specimens that belong together',
      widthRem: 10,
      isRequired: true,
    }),
    textColumn({ key: 'specimen', title: 'Specimen', widthRem: 5, isRequired: true }),
    choiceColumn({ key: 'kind', title: 'Tested', widthRem: 6, isRequired: true, names: FLEX_TEST_KINDS }),
    textColumn({
      key: 'foil',
      title: 'Foil',
      hint: 'id of the library',
      widthRem: 9,
      isRequired: true,
      choices: FOILS,
    }),
    numberColumn({ key: 'foilUm', title: 'Foil thickness', unit: 'um', widthRem: 5.5, isRequired: true }),
    numberColumn({ key: 'thicknessUm', title: 'Thickness bent', unit: 'um', widthRem: 5.5, isRequired: true }),
    numberColumn({ key: 'insideRadiusMm', title: 'Inside radius', unit: 'mm', widthRem: 5.5, isRequired: true }),
    choiceColumn({ key: 'motion', title: 'Motion', widthRem: 6, isRequired: true, names: FLEX_TEST_MOTIONS }),
    numberColumn({ key: 'strainRangePct', title: 'Copper strain range', hint: '% of a cycle, if known', widthRem: 6 }),
    numberColumn({ key: 'cycles', title: 'Cycles', hint: 'out and back is one', widthRem: 6, isRequired: true }),
    choiceColumn({ key: 'result', title: 'Result', widthRem: 6, isRequired: true, names: FLEX_TEST_RESULTS }),
    numberColumn({ key: 'temperatureDegC', title: 'Temperature', hint: '°C', widthRem: 6 }),
    textColumn({ key: 'testedOn', title: 'Tested on', hint: 'YYYY-MM-DD', widthRem: 7, isNullable: true }),
    textColumn({ key: 'laboratory', title: 'Laboratory', widthRem: 9 }),
    textColumn({ key: 'report', title: 'Report', widthRem: 8 }),
    textColumn({ key: 'note', title: 'Note', widthRem: 14 }),
  ],
  readRow: (fields) => {
    const parsed = flexTestRowSchema.safeParse(fields)
    if (!parsed.success) {
      return {
        ok: false,
        problems: parsed.error.issues.map(({ path, message }) => ({ field: String(path[0] ?? 'set'), message })),
      }
    }
    const issues = findFlexTestRowIssues(parsed.data)
    return issues.length === 0 ? { ok: true, row: parsed.data } : { ok: false, problems: issues }
  },
  findProblemsAcross: findFlexTestIssues,
  keyOf: flexTestRowKey,
}
