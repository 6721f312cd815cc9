import { listLibraryMaterials } from '@/lib/engine'
import { shelfRowKey } from '../sheets/row-keys'
import { findShelfIssues, findShelfRowIssues, type ShelfRow, shelfRowSchema } from '../shelf'
import { choiceColumn, type FabricationTable, numberColumn, textColumn, yesNoColumn } from './columns'

const idsOf = (isFoil: boolean | null) =>
  listLibraryMaterials()
    .filter(({ kind }) => isFoil === null || (kind === 'copper-foil') === isFoil)
    .map(({ id }) => id)

const ADHESIVES = listLibraryMaterials()
  .filter(({ kind }) => kind === 'adhesive')
  .map(({ id }) => id)

export const SHELF_TABLE: FabricationTable<ShelfRow> = {
  columns: [
    textColumn({
      key: 'material',
      title: 'Material',
      hint: 'id or specification',
      widthRem: 15,
      isRequired: true,
      choices: idsOf(null),
    }),
    numberColumn({ key: 'thicknessUm', title: 'Thickness', unit: 'um', widthRem: 5.5, isRequired: true }),
    textColumn({ key: 'foil', title: 'Foil', hint: 'of a clad', widthRem: 8, isNullable: true, choices: idsOf(true) }),
    numberColumn({ key: 'foilUm', title: 'Foil thickness', unit: 'um', widthRem: 5.5 }),
    numberColumn({ key: 'foilSides', title: 'Foil sides', hint: '1 or 2', widthRem: 5 }),
    textColumn({
      key: 'adhesive',
      title: 'Adhesive',
      hint: 'that comes with it',
      widthRem: 10,
      isNullable: true,
      choices: ADHESIVES,
    }),
    numberColumn({ key: 'adhesiveUm', title: 'Adhesive thickness', unit: 'um', widthRem: 6 }),
    choiceColumn({
      key: 'form',
      title: 'Form',
      widthRem: 5,
      names: { roll: 'roll', sheet: 'sheet' },
      isNullable: true,
    }),
    numberColumn({ key: 'widthMm', title: 'Width', unit: 'mm', widthRem: 5 }),
    yesNoColumn({ key: 'onShelf', title: 'On the shelf', widthRem: 5, isRequired: true }),
    numberColumn({ key: 'leadTimeDays', title: 'Lead time', hint: 'days', unit: 'days', widthRem: 5 }),
    numberColumn({ key: 'minimumOrderM2', title: 'Minimum order', hint: 'm2', unit: 'm2', widthRem: 6 }),
    textColumn({ key: 'note', title: 'Note', widthRem: 16 }),
  ],
  readRow: (fields) => {
    const parsed = shelfRowSchema.safeParse(fields)
    if (!parsed.success) {
      return {
        ok: false,
        problems: parsed.error.issues.map(({ path, message }) => ({ field: String(path[0] ?? 'material'), message })),
      }
    }
    const issues = findShelfRowIssues(parsed.data)
    return issues.length === 0 ? { ok: true, row: parsed.data } : { ok: false, problems: issues }
  },
  findProblemsAcross: findShelfIssues,
  keyOf: shelfRowKey,
}
