import 'server-only'
import type { LimitOwner, TestedLife } from '@/lib/engine'
import { type FlexTestRow, listTestedLives } from '@/lib/engine/flex-tests'
import type { LoadedRevision } from './loaded-revision'
import { type CompanySheets, pickSheets } from './sheet-records'

/** Fits by the list that they were made of: a request asks for the same ones several times. */
const fitted = new WeakMap<readonly FlexTestRow[], readonly TestedLife[]>()

/**
 * What flex tests give that a view of a revision may rest on: the workspace's, as the review's version of the catalogue has them, and those
 * of fabricators who show their matrix; to a fabricator its own alone beside the workspace's. Without any specimen.
 *
 * @param fabricatorCompanyId  null is the team
 */
export function findTestedLives(loaded: LoadedRevision, fabricatorCompanyId: string | null): readonly TestedLife[] {
  return combineTestedLives(loaded, pickSheets(loaded.fabrication, fabricatorCompanyId))
}

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
  const known = fitted.get(rows) ?? listTestedLives(rows, owner)
  fitted.set(rows, known)
  return known
}
