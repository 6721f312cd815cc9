import 'server-only'
import type { DeclarationInput } from '@/lib/inputs'
import { ACT_MEANINGS, describeCondition, hashDeclaredContent, listConditionFields } from '@/lib/review'
import { changeContent } from '../../consequences/changed-content'
import { type Actor, requireRevision } from '../../records/authorization'
import { listChangesSince } from '../../records/changes-since'
import { keepDesignState } from '../../records/design-states'
import { type LoadedRevision, loadRevision } from '../../records/loaded-revision'
import { makeSnapshot } from '../../records/snapshot'
import { refuseInvalid, refuseStale } from '../../store/errors'
import type { ActResult } from '../../views'
import { writeConfirmed } from '../access/confirmed-write'

/**
 * A fabricator's word on the present design and artwork: buildable as it stands, under conditions, or not. A later one of
 * the same company replaces it; signatures on the revision as it was before are voided.
 */
export function declareBuildable(actor: Actor, input: DeclarationInput): Promise<ActResult<{ declarationId: string }>> {
  const door = { act: 'declare', action: 'declare-buildable' } as const
  return writeConfirmed(actor, door, input, async (context, confirmedBy) => {
    const { tx, rights, at, record } = context
    const { revision, fabricatorCompanyId } = await requireRevision(tx, rights, input.revisionId, 'declaration:make')
    if (fabricatorCompanyId === null) throw new Error('the policy let somebody declare who is no fabricator')
    const loaded = await loadRevision(tx, revision.id)
    if (revision.version !== input.seenVersion) {
      refuseStale(
        input.seenVersion,
        revision.version,
        listChangesSince(loaded, input.seenVersion, fabricatorCompanyId),
        'the revision',
      )
    }
    const conditions = nameConditions(loaded, input)
    const contentHash = hashDeclaredContent(makeSnapshot(loaded, fabricatorCompanyId).snapshot)
    const company = loaded.sheets.fabricators.find(({ companyId }) => companyId === fabricatorCompanyId)?.name ?? ''
    const { designHash, designJson } = loaded.record
    const madeAt = findLaterMoment(loaded, fabricatorCompanyId, at)
    const { value: declarationId } = await changeContent(context, loaded, null, async () => {
      await keepDesignState(tx, { hash: designHash, designJson }, at)
      const declaration = await tx.declaration.create({
        data: {
          revisionId: revision.id,
          companyId: fabricatorCompanyId,
          isBuildable: input.verdict === 'buildable',
          verdict: input.verdict,
          note: input.note,
          contentHash,
          designHash,
          madeById: rights.userId,
          madeAt,
        },
      })
      for (const [index, condition] of conditions.entries()) {
        await tx.declarationCondition.create({
          data: { declarationId: declaration.id, ordinal: index + 1, ...condition },
        })
      }
      await record({
        action: RECORDED_AS[input.verdict],
        subject: { kind: 'declaration', id: declaration.id },
        projectId: revision.projectId,
        revisionId: revision.id,
        companyId: fabricatorCompanyId,
        details: {
          company,
          note: input.note,
          contentHash,
          ...(conditions.length === 0 ? {} : { conditions: conditions.map(describeCondition) }),
          meaning: ACT_MEANINGS.declare,
          confirmedBy,
        },
      })
      return declaration.id
    })
    return { declarationId }
  })
}

const RECORDED_AS = {
  buildable: 'declared-buildable',
  'with-conditions': 'declared-with-conditions',
  'not-buildable': 'declared-not-buildable',
} as const

/** Conditions with the names that their fields have now. */
function nameConditions({ design }: LoadedRevision, { conditions }: DeclarationInput) {
  const labels = new Map(listConditionFields(design).map(({ path, label }) => [path, label]))
  const unknown = conditions.flatMap(({ field }, index) =>
    field === '' || labels.has(field)
      ? []
      : [{ code: 'unknown', path: ['conditions', index, 'field'], message: 'is not a field of this design' }],
  )
  if (unknown.length > 0) refuseInvalid(unknown, 'A condition names a field that the design does not have.')
  return conditions.map(({ text, field, value }) => ({ text, field, fieldLabel: labels.get(field) ?? '', value }))
}

/** The company's latest word counts: a clock that was set back must not make an earlier one the latest. */
function findLaterMoment({ record }: LoadedRevision, companyId: string, at: Date): Date {
  const earlier = record.declarations.filter((declaration) => declaration.companyId === companyId)
  return new Date(Math.max(at.getTime(), ...earlier.map(({ madeAt }) => madeAt.getTime() + 1)))
}
