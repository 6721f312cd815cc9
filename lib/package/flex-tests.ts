import { cautionOfFlexTestSet, describeFlexTestSet } from '@/lib/drawing'
import { describeLimitOwner, type Evaluation, type LimitOwner, nameOwnTests, type OwnTestsUse } from '@/lib/engine'
import { type FlexTestRow, type FlexTestSet, fitFlexTestSets } from '@/lib/engine/flex-tests'
import { FLEX_TEST_TABLE, writeTable } from '@/lib/fabrication'
import { writeCsv } from '@/lib/spreadsheet'
import type { PackageContent, PackageFile } from './content'

export const FLEX_TESTS_INDEX_PATH = 'flex-tests/index.json'

/** A set that results rest on: with its specimens, or, where they are another's, by the figures of the results alone. */
export interface UsedFlexTestSet {
  readonly owner: LimitOwner
  readonly use: OwnTestsUse
  /** Null where the specimens are not for the readers of this edition. */
  readonly packed: { readonly set: FlexTestSet; readonly rows: readonly FlexTestRow[] } | null
}

const isOwner = (a: LimitOwner, b: LimitOwner): boolean => a.kind === b.kind && a.name === b.name
const keyOf = ({ owner, set }: Pick<OwnTestsUse, 'owner' | 'set'>): string =>
  JSON.stringify([owner.kind, owner.name, set.toLowerCase()])

/** Each set that a bend's life rests on, once, in the order of the bends. */
export function listUsedFlexTestSets({
  snapshot,
  flexTests,
}: Pick<PackageContent, 'snapshot' | 'flexTests'>): readonly UsedFlexTestSet[] {
  const uses = listUses(snapshot.evaluation?.results ?? null)
  return uses.map((use) => {
    const rows =
      flexTests
        .find(({ owner }) => isOwner(owner, use.owner))
        ?.rows.filter(({ set }) => set.toLowerCase() === use.set.toLowerCase()) ?? []
    const [set] = fitFlexTestSets(rows, use.owner)
    return { owner: use.owner, use, packed: set === undefined ? null : { set, rows } }
  })
}

function listUses(results: Evaluation | null): readonly OwnTestsUse[] {
  const uses = (results?.bends ?? []).flatMap(({ ownTests }) => ownTests)
  return [...new Map(uses.toReversed().map((use) => [keyOf(use), use])).values()].toReversed()
}

/**
 * The specimens, one file for each owner in the form in which sheets are exported, so that the command `evaluate` reads them back; and
 * what each set gives. No file where no life rests on tests.
 */
export function makeFlexTestFiles(content: PackageContent): PackageFile[] {
  const used = listUsedFlexTestSets(content)
  if (used.length === 0) return []
  const owners = [...new Map(used.map(({ owner }) => [describeLimitOwner(owner), owner])).values()]
  const files = owners.flatMap((owner, at): (PackageFile & { readonly owner: LimitOwner })[] => {
    const rows = used.filter((each) => isOwner(each.owner, owner)).flatMap(({ packed }) => packed?.rows ?? [])
    if (rows.length === 0) return []
    const number = String(at + 1).padStart(3, '0')
    const plain = owner.name.replaceAll(/[^A-Za-z0-9._-]+/g, '-').slice(-100)
    return [
      { path: `flex-tests/${number}-${plain}.csv`, bytes: encode(writeCsv(writeTable(FLEX_TEST_TABLE, rows))), owner },
    ]
  })
  const index = {
    sets: used.map(({ owner, use, packed }) => ({
      name: use.set,
      owner,
      statedAs: nameOwnTests(use),
      file: files.find((file) => isOwner(file.owner, owner))?.path ?? null,
      ...(packed === null
        ? { withheld: describeWithheld(use) }
        : {
            tested: describeFlexTestSet(packed.set),
            slope: packed.set.fit?.slope ?? null,
            conditions: packed.set.conditions.map(
              ({ insideRadiusMm, thicknessUm, strainRangePct, specimens, fitted, fatigueDuctility }) => ({
                insideRadiusMm,
                thicknessUm,
                strainRangePct,
                specimens,
                life: fitted === null ? null : (packed.set.fit?.lives[fitted] ?? null),
                fatigueDuctility,
              }),
            ),
            caution: cautionOfFlexTestSet(packed.set),
          }),
    })),
  }
  return [
    ...files.map(({ path, bytes }) => ({ path, bytes })),
    { path: FLEX_TESTS_INDEX_PATH, bytes: encode(`${JSON.stringify(index, null, 2)}\n`) },
  ]
}

/** Why a set stands here without its specimens. */
export const describeWithheld = ({ owner }: Pick<OwnTestsUse, 'owner'>): string =>
  `The specimens are kept by ${describeLimitOwner(owner)}; this edition holds the figures alone.`

const encode = (text: string) => new TextEncoder().encode(text)
