import 'server-only'
import { assessInOrder } from '@/lib/fabrication'
import { evaluateFor } from '../records/evaluation'
import { measureOnce } from '../records/fabrication-facts'
import { type LoadedRevision, loadRevision } from '../records/loaded-revision'
import type { WriteContext } from './write'

/**
 * Notes, for each fabricator whose limits the revision is checked against without being shown, how many of their verdicts a
 * save of the design moved. By moving a value to and fro one could close in on a limit: the company sees how often.
 */
export async function noteVerdictFlips(
  context: WriteContext,
  before: LoadedRevision,
  after: LoadedRevision,
): Promise<void> {
  for (const { companyId, sharing } of after.fabrication) {
    if (sharing.matrix === 'checked') await noteFlips(context, companyId, before, after)
  }
}

/**
 * The same for a revision that is newly shared, beside the one that was shared with the company before it: a trial is a
 * trial, whether it is saved over the last one or begun as a copy.
 */
export async function noteFlipsOfShare(context: WriteContext, revisionId: string, companyId: string): Promise<void> {
  const { tx } = context
  const after = await loadRevision(tx, revisionId)
  if (after.fabrication.find((company) => company.companyId === companyId)?.sharing.matrix !== 'checked') return
  const last = await tx.revisionShare.findFirst({
    where: { companyId, revision: { projectId: after.record.projectId, id: { not: revisionId } } },
    orderBy: [{ createdAt: 'desc' }, { id: 'desc' }],
  })
  if (last !== null) await noteFlips(context, companyId, await loadRevision(tx, last.revisionId), after)
}

async function noteFlips(
  { tx, rights, at }: WriteContext,
  companyId: string,
  before: LoadedRevision,
  after: LoadedRevision,
): Promise<void> {
  const [old, now] = [listHiddenVerdicts(before, companyId), listHiddenVerdicts(after, companyId)]
  const flips = [...now].filter(([place, verdict]) => (old.get(place) ?? verdict) !== verdict).length
  if (flips === 0) return
  const { id: revisionId, projectId, designVersion } = after.record
  await tx.verdictFlip.create({
    data: { companyId, projectId, revisionId, designVersion, userId: rights.userId, flips, at },
  })
}

/** What the team is told of one fabricator's limits and matrix, by item and place. */
function listHiddenVerdicts(loaded: LoadedRevision, companyId: string): ReadonlyMap<string, string> {
  const { sheets, fabrication, design } = loaded
  const fabricators = sheets.fabricators.filter((fabricator) => fabricator.companyId === companyId)
  const alone = {
    ...loaded,
    sheets: { ...sheets, fabricators },
    fabrication: fabrication.filter((company) => company.companyId === companyId),
  }
  const evaluatedOn = loaded.record.evaluations[0]?.createdAt ?? loaded.record.createdAt
  const { items } = evaluateFor(alone, { fabricatorCompanyId: null, evaluatedOn })
  const told = items.flatMap(({ itemId, outcomes }) =>
    outcomes.flatMap((outcome): [string, string][] =>
      outcome.kind === 'withheld'
        ? [[`limit ${itemId} ${placesOf(outcome.places)}`, `${outcome.verdict} ${outcome.band}`]]
        : [],
    ),
  )
  const matrix = alone.fabrication[0]?.sheets.matrix?.content.rows ?? []
  const cells = assessInOrder(measureOnce(design), matrix).flatMap(({ parameter, values }) =>
    values.map(({ place, verdict }): [string, string] => [`matrix ${parameter.key} ${placesOf([place])}`, verdict]),
  )
  return new Map([...told, ...cells])
}

const placesOf = (places: readonly { readonly kind: string; readonly id: string }[]) =>
  places.map(({ kind, id }) => `${kind} ${id}`).join()
