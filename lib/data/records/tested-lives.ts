import 'server-only'
import type { Evaluation, LimitOwner, TestedLife } from '@/lib/engine'
import { type FlexTestRow, listTestedLives } from '@/lib/engine/flex-tests'
import type { PackedFlexTests } from '@/lib/package'
import { hashJson } from '@/lib/review'
import type { LoadedRevision } from './loaded-revision'
import { type CompanySheets, pickSheets } from './sheet-records'

/** Fits by the list that they were made of: a request asks for the same ones several times. */
const fitted = new WeakMap<readonly FlexTestRow[], readonly TestedLife[]>()
/** The same by content, for the next request: a full sheet takes up to a second to fit. The most that is kept is our choice. */
const fittedByContent = new Map<string, readonly TestedLife[]>()
const MOST_KEPT = 64

/**
 * What flex tests give that a view of a revision may rest on: the workspace's, as the review's version of the catalogue has them, and those
 * of fabricators who show their matrix; to a fabricator its own alone beside the workspace's. Without any specimen.
 *
 * @param fabricatorCompanyId  null is the team
 */
export function findTestedLives(loaded: LoadedRevision, fabricatorCompanyId: string | null): readonly TestedLife[] {
  return combineTestedLives(loaded, pickSheets(loaded.fabrication, fabricatorCompanyId))
}

/**
 * The specimens that an edition of a release package includes: its readers' own, the workspace's to the team, a fabricator's to that
 * fabricator, of the sets that lives of its results rest on. Of anybody else's, results hold the figures: observers read the team's edition,
 * and are shown no fabricator's sheet.
 */
export function findPackedFlexTests(
  { template, workspace, fabrication }: LoadedRevision,
  fabricatorCompanyId: string | null,
  results: Evaluation | null,
): readonly PackedFlexTests[] {
  const used = new Set(
    (results?.bends ?? []).flatMap(({ ownTests }) => ownTests.map(({ owner, set }) => keyOfSet(owner, set))),
  )
  const own: readonly PackedFlexTests[] =
    fabricatorCompanyId === null
      ? [{ owner: { kind: 'workspace', name: workspace.name }, rows: template.content.flexTests ?? [] }]
      : pickSheets(fabrication, fabricatorCompanyId).map(({ companyName, sheets }) => ({
          owner: { kind: 'fabricator', name: companyName },
          rows: sheets['flex-tests']?.content.rows ?? [],
        }))
  return own
    .map(({ owner, rows }) => ({ owner, rows: rows.filter(({ set }) => used.has(keyOfSet(owner, set))) }))
    .filter(({ rows }) => rows.length > 0)
}

const keyOfSet = ({ kind, name }: LimitOwner, set: string): string => JSON.stringify([kind, name, set.toLowerCase()])

/** The workspace's with those of some fabricators, whose sheets were picked for the view. */
export function combineTestedLives(
  { template, workspace }: Pick<LoadedRevision, 'template' | 'workspace'>,
  companies: readonly CompanySheets[],
): readonly TestedLife[] {
  return [
    ...fitOnce(template.content.flexTests, { kind: 'workspace', name: workspace.name }),
    ...companies.flatMap(({ companyName, sheets }) =>
      fitOnce(sheets['flex-tests']?.content.rows, { kind: 'fabricator', name: companyName }),
    ),
  ]
}

function fitOnce(rows: readonly FlexTestRow[] | undefined, owner: LimitOwner): readonly TestedLife[] {
  if (rows === undefined) return []
  const known = fitted.get(rows) ?? fitByContent(rows, owner)
  fitted.set(rows, known)
  return known
}

function fitByContent(rows: readonly FlexTestRow[], owner: LimitOwner): readonly TestedLife[] {
  const key = hashJson({ rows, owner })
  const known = fittedByContent.get(key) ?? listTestedLives(rows, owner)
  // What was asked for last goes to the end; what nobody asks for is dropped first.
  fittedByContent.delete(key)
  fittedByContent.set(key, known)
  const [oldest] = fittedByContent.keys()
  if (fittedByContent.size > MOST_KEPT && oldest !== undefined) fittedByContent.delete(oldest)
  return known
}
