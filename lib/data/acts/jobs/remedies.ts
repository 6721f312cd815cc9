import 'server-only'
import { now } from '@/lib/config'
import { ENGINE_VERSION, type RemedyReport, readStoredJson } from '@/lib/engine'
import type { WayOut } from '@/lib/engine/remedies'
import { type RemediesInput, remediesInput, type WayOutInput, wayOutInput } from '@/lib/inputs'
import { type JobOptions, type RemedyOrder, runJob, type WayOutOrder } from '@/lib/jobs'
import { hashJson } from '@/lib/review'
import { getRemedyBases } from '../../reads/production'
import { read } from '../../reads/read'
import { type Actor, requireRevisionInView } from '../../records/authorization'
import { checkDesign } from '../../records/design-input'
import { combineLimits } from '../../records/effective-limits'
import { gatherArtworkFacts } from '../../records/evaluation'
import { askForJob } from '../../records/job-record'
import { loadRevision } from '../../records/loaded-revision'
import { findTestedLives } from '../../records/tested-lives'
import { outcomeOf, refuseField } from '../../store/errors'
import type { ActResult } from '../../views'

/**
 * Asks for changes that the trade would try on a bend of a draft, under the limits that the person is shown. The same draft, bend
 * and fabricator find the same job again: its result is kept until something that it rests on changes.
 */
export function askForRemedies(actor: Actor, input: RemediesInput): Promise<ActResult<{ readonly jobId: string }>> {
  return outcomeOf(async () => keepJob('remedies', actor, input, await prepare(actor, input)))
}

/** @throws RefusalError where the draft, or what the person may see, no longer allows it */
export async function runRemedies(actor: Actor, inputJson: string, options: JobOptions): Promise<RemedyReport> {
  const input = readStoredJson('a job that was asked for', remediesInput, inputJson)
  return runJob('remedies', await prepare(actor, input), options)
}

/** Asks for a way out of what fails in a draft, under the limits that the person is shown; the same draft finds the same job again. */
export function askForWayOut(actor: Actor, input: WayOutInput): Promise<ActResult<{ readonly jobId: string }>> {
  return outcomeOf(async () => keepJob('way-out', actor, input, await prepareDraft(actor, input)))
}

/** @throws RefusalError where the draft, or what the person may see, no longer allows it */
export async function runWayOut(actor: Actor, inputJson: string, options: JobOptions): Promise<WayOut> {
  const input = readStoredJson('a job that was asked for', wayOutInput, inputJson)
  return runJob('wayOut', await prepareDraft(actor, input), options)
}

/** @param order  all that the result rests on: the same one finds the same job */
async function keepJob(
  kind: 'remedies' | 'way-out',
  { userId }: Actor,
  input: RemediesInput | WayOutInput,
  order: object,
): Promise<{ readonly jobId: string }> {
  const key = hashJson({ kind, askedBy: userId, order, engineVersion: ENGINE_VERSION })
  const { revisionId } = input
  return { jobId: await askForJob({ kind, key, askedById: userId, revisionId, inputJson: JSON.stringify(input) }) }
}

async function prepare(actor: Actor, input: RemediesInput): Promise<RemedyOrder> {
  const order = await prepareDraft(actor, input)
  if (!order.design.bends.some(({ id }) => id === input.bendId)) {
    refuseField('bendId', 'unknown-bend', `there is no bend "${input.bendId}" in this design`)
  }
  return { ...order, bendId: input.bendId }
}

async function prepareDraft(actor: Actor, input: WayOutInput): Promise<WayOutOrder> {
  const { design } = checkDesign(input.design)
  const rules = await read(actor, async ({ tx, rights }) => {
    const { fabricatorCompanyId } = await requireRevisionInView(tx, rights, input.revisionId)
    const loaded = await loadRevision(tx, input.revisionId)
    return {
      limits: combineLimits(loaded.sheets, fabricatorCompanyId),
      testedLives: findTestedLives(loaded, fabricatorCompanyId),
      facts: gatherArtworkFacts(loaded),
      template: loaded.template.content,
    }
  })
  return {
    design,
    ...rules,
    isRadiusFixed: input.isRadiusFixed,
    basis: await findBasis(actor, input),
    today: now().toISOString().slice(0, 10),
  }
}

async function findBasis(actor: Actor, { revisionId, companyId }: WayOutInput): Promise<RemedyOrder['basis']> {
  if (companyId === null) return null
  const bases = await getRemedyBases(actor, revisionId)
  const found = bases.find(({ company }) => company.id === companyId)
  if (found === undefined) {
    return refuseField('companyId', 'unknown-company', 'this fabricator shows neither panel formats nor a shelf here')
  }
  return found
}
