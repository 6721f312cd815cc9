import { cautionOfFlexTestSet, describeFlexTestSet, listFlexTestConditions } from '@/lib/drawing'
import { type Evaluation, nameOwnTests } from '@/lib/engine'
import { fitFlexTestSets } from '@/lib/engine/flex-tests'
import type { FlexTestFile } from './flex-test-file'
import { formatTable, wrapText } from './text-table'

/** What each set of the files gives, and which bends rest on it. */
export function formatFlexTests(files: readonly FlexTestFile[], { bends }: Evaluation, width: number): string[] {
  return files.flatMap(({ rows, owner, unknownColumns }) => [
    ...(unknownColumns.length === 0
      ? []
      : ['', `${owner.name}: columns left out: ${unknownColumns.map((column) => `"${column}"`).join(', ')}`]),
    ...fitFlexTestSets(rows, owner).flatMap((set) => {
      const resting = bends.filter(({ ownTests }) =>
        ownTests.some((use) => use.set === set.name && use.owner.name === owner.name),
      )
      const { columns, rows: cells } = listFlexTestConditions(set)
      return [
        '',
        nameOwnTests({ set: set.name, owner, specimens: set.specimens, failures: set.failures }),
        ...wrapText(describeFlexTestSet(set), width, '  '),
        ...formatTable(
          columns.map(({ label, numeric }) => ({ title: label, align: numeric ? 'right' : 'left' })),
          cells.map((row) => columns.map(({ key }) => row[key] ?? '')),
        ),
        ...wrapText(cautionOfFlexTestSet(set), width, '  '),
        resting.length === 0
          ? '  No bend rests on this set: use, foil, foil thickness, motion, R/t or strain range differ, or it gives nothing.'
          : `  Bends whose life rests on it: ${resting.map(({ name }) => name).join(', ')}.`,
      ]
    }),
  ])
}
