import { expect } from 'vitest'
import {
  findBlockers,
  hashDeclaredContent,
  hashSignedContent,
  isOpenStage,
  isStage,
  listLiveSignatures,
  type ReviewSnapshot,
} from '@/lib/review'
import { FABRICATORS } from './steps'

/** The policy once more, by definition and with none of the code that decides: nothing released was approved against it. */
function checkIndependence({
  signOffPolicy,
  authors,
  reviews,
  signatures,
  waivers,
  evaluation,
  items,
}: ReviewSnapshot) {
  if (signOffPolicy === null) throw new Error('released under no policy')
  const { rules } = signOffPolicy
  const made = new Set(authors.map(({ userId }) => userId))
  const signers = signatures.filter(({ voided }) => voided === null).map(({ userId }) => userId)
  if (rules.authorSigns === 'no') expect(signers.filter((userId) => made.has(userId))).toEqual([])
  if (rules.authorSigns === 'beside') expect(signers.some((userId) => !made.has(userId))).toBe(true)
  const judged = reviews.filter(
    ({ userId, role }) => !made.has(userId) && (rules.review !== 'quality' || role === 'quality'),
  )
  if (rules.review !== 'none') expect(judged.length).toBeGreaterThan(0)
  const failed = (evaluation?.results.items ?? []).filter(({ verdict }) => verdict === 'fails')
  for (const { itemId } of failed) {
    const severity = items.find(({ id }) => id === itemId)?.severity
    const rule = severity === 'blocking' ? rules.waiverBlocking : rules.waiverMajor
    const independent = waivers.filter(
      ({ proposedBy, decidedBy, decidedAsRole }) =>
        rule === 'anyone' ||
        (decidedBy !== proposedBy &&
          (rule === 'second-person' ||
            (!made.has(decidedBy ?? '') && (rule === 'no-author' || decidedAsRole === 'quality')))),
    )
    expect(independent.length).toBeGreaterThan(0)
  }
}

/** In words of the test's own: nobody who was not taken off refused, asked for more, or waits for a change. */
function checkRelease({ declarations, takenOff, threads, actions, ...snapshot }: ReviewSnapshot): void {
  const contentHash = hashDeclaredContent(snapshot)
  let yes = 0
  for (const { companyId } of Object.values(FABRICATORS)) {
    if (takenOff.some((entry) => entry.companyId === companyId)) continue
    const last = declarations.findLast((declaration) => declaration.companyId === companyId)
    if (last === undefined) continue
    expect(last.verdict, 'a standing no').not.toBe('not-buildable')
    for (const { state } of last.conditions) expect(['action', 'taken-over'], 'a condition').toContain(state)
    if (last.contentHash === contentHash) yes += 1
  }
  expect(yes, 'a yes on the present content').toBeGreaterThan(0)
  for (const { due, isAfterRelease, state } of actions) {
    if (due === 'before-release' && !isAfterRelease) expect(['closed', 'dropped'], 'an action').toContain(state)
  }
  const rule = snapshot.signOffPolicy?.rules.differences
  for (const { reason, answeredBy, state } of snapshot.answers) {
    if (!reason.includes('note 4') || state === 'open' || rule === 'listed') continue
    expect(rule, 'a difference under a policy that lets none stay').toBe('acknowledged')
    expect(snapshot.acknowledgements.filter(({ byId }) => byId !== answeredBy).length).toBeGreaterThan(0)
  }
  for (const { kind, state } of threads) {
    if (kind === 'must-change') expect(state).toBe('closed')
    if (kind === 'engineering-query') expect(state).not.toBe('open')
  }
}

export function checkInvariants(before: ReviewSnapshot, after: ReviewSnapshot): void {
  expect(isStage(after.stage)).toBe(true)
  // No unvoided signature is ever on other content while the revision can still change.
  const contentHash = hashSignedContent(after)
  for (const signature of after.signatures) {
    if (signature.voided === null && isOpenStage(after.stage)) expect(signature.contentHash).toBe(contentHash)
  }
  if (after.stage === 'released' && before.stage !== 'released') {
    expect(findBlockers(after, 'awaiting-signature')).toEqual([])
    expect(listLiveSignatures(after).length).toBeGreaterThan(0)
    checkIndependence(after)
    checkRelease(after)
  }
  // What was released is never changed, only superseded or withdrawn.
  if (before.stage === 'released') {
    // An action that is dropped later was part of it; it is settled beside what was signed.
    expect(hashSignedContent({ ...before, actions: [] })).toBe(hashSignedContent({ ...after, actions: [] }))
    expect(after.signatures).toEqual(before.signatures)
    expect(['released', 'superseded', 'withdrawn']).toContain(after.stage)
  }
  if (before.stage === 'superseded' || before.stage === 'withdrawn') expect(after.stage).toBe(before.stage)
}
