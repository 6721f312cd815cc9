import { expect } from 'vitest'
import {
  type Declaration,
  type DeclarationCondition,
  decideSigning,
  decideTransition,
  explainNoApproval,
  findBlockers,
  findSignaturesToVoid,
  getRevisionSubject,
  hashDeclaredContent,
  hashDesign,
  hashPresentSubstance,
  hashSignedContent,
  hashWaiverBasis,
  isAllowed,
  isAuthor,
  type ReviewSnapshot,
  type ReviewThread,
  type Rights,
} from '@/lib/review'
import { BRACKENFOLD, FABRICATOR, makeDesign, makeEvaluation, makeResult } from '../snapshot-factory'
import { settle } from './settling'
import { ACTORS, FABRICATORS, type Step } from './steps'

const makeCondition = (id: string): DeclarationCondition => ({
  id,
  text: 'Only with an inside radius of 8 mm.',
  field: '',
  fieldLabel: '',
  value: '',
  state: 'open',
  decidedByName: null,
  decidedAt: null,
  decisionNote: '',
  done: null,
})

/** A small radius fails its calculation, so edits move the revision in and out of being releasable. */
const FAILS_BELOW_MM = 3

export function evaluateModel(snapshot: ReviewSnapshot): ReviewSnapshot {
  const radiusMm = snapshot.design.bends[0]?.insideRadiusMm ?? 0
  return {
    ...snapshot,
    evaluation: {
      designHash: hashDesign(snapshot.design),
      limitsHash: snapshot.limitsHash,
      engineVersion: snapshot.engineVersion,
      evaluatedAt: '2027-03-01T09:00:00.000Z',
      results: makeEvaluation([
        makeResult('bend-strain', radiusMm < FAILS_BELOW_MM ? 'fails' : 'meets', 1 / radiusMm),
        makeResult('inside-corners', 'meets'),
        makeResult('packing-notes', 'needs-judgment'),
      ]),
    },
  }
}

/** Applies a change as the data layer does: signatures left on other content are voided in the same step. */
export function withVoids(before: ReviewSnapshot, after: ReviewSnapshot): ReviewSnapshot {
  const voids = new Map(findSignaturesToVoid(before, after).map((entry) => [entry.signatureId, entry]))
  for (const entry of voids.values()) expect(entry.changes.length).toBeGreaterThan(0)
  return {
    ...after,
    version: before.version + 1,
    signatures: after.signatures.map((signature) => {
      const entry = voids.get(signature.id)
      return entry === undefined
        ? signature
        : {
            ...signature,
            voided: {
              at: '2027-03-05T09:00:00.000Z',
              reason: entry.reason,
              changes: entry.changes.map(({ sentence }) => sentence),
            },
          }
    }),
  }
}

export function apply(snapshot: ReviewSnapshot, step: Step): ReviewSnapshot {
  const subject = getRevisionSubject(snapshot)
  switch (step.kind) {
    case 'move': {
      const decision = decideTransition(snapshot, ACTORS[step.actor], step)
      if (!decision.ok) return snapshot
      if (step.move === 'advance') expect(findBlockers(snapshot)).toEqual([])
      const voided = new Map(decision.value.voids.map(({ signatureId, reason }) => [signatureId, reason]))
      return {
        ...snapshot,
        stage: decision.value.to,
        signatures: snapshot.signatures.map((signature) => {
          const reason = voided.get(signature.id)
          return reason === undefined || signature.voided !== null
            ? signature
            : { ...signature, voided: { at: '2027-03-05T09:00:00.000Z', reason, changes: [] } }
        }),
      }
    }
    case 'sign': {
      const actor: Rights = ACTORS[step.actor]
      if (!decideSigning(snapshot, actor).ok) return snapshot
      return {
        ...snapshot,
        signatures: [
          ...snapshot.signatures,
          {
            id: `signature-${snapshot.signatures.length}`,
            userId: actor.userId,
            name: actor.userId,
            capacity: 'lead engineer',
            statement: 'Reviewed.',
            signedAt: '2027-03-04T09:00:00.000Z',
            contentHash: hashSignedContent(snapshot),
            substanceHash: hashPresentSubstance(snapshot),
            voided: null,
          },
        ],
      }
    }
    case 'edit': {
      const actor = ACTORS[step.actor]
      if (!isAllowed(actor, 'revision:edit', subject)) return snapshot
      const design = makeDesign((d) => Object.assign(d.bends[0] ?? {}, { insideRadiusMm: step.radiusMm }))
      const isKnown = snapshot.authors.some(({ userId }) => userId === actor.userId)
      const { userId } = actor
      const made = { userId, name: userId, parts: ['design' as const], changes: null }
      const authors = isKnown ? snapshot.authors : [...snapshot.authors, made]
      return withVoids(snapshot, { ...snapshot, design, authors })
    }
    case 'evaluate':
      return subject.stage === 'released' ? snapshot : withVoids(snapshot, evaluateModel(snapshot))
    case 'answer': {
      const actor = ACTORS[step.actor]
      if (!isAllowed(actor, 'item:answer', { ...subject, kind: 'item', answeredBy: ['member', 'lead'] }))
        return snapshot
      const answers = [
        {
          itemId: 'packing-notes',
          state: step.state,
          reason: step.reason,
          answeredBy: actor.userId,
          answeredByName: actor.userId,
          answeredAt: '2027-03-02T09:00:00.000Z',
          evidence: [],
        },
      ]
      return withVoids(snapshot, { ...snapshot, answers })
    }
    case 'declare': {
      const { companyId, companyName, rights } = FABRICATORS[step.company]
      if (!isAllowed(rights, 'declaration:make', subject)) return snapshot
      const at = snapshot.declarations.length
      const declaration: Declaration = {
        id: `declaration-${at}`,
        companyId,
        companyName,
        verdict: step.verdict,
        note: step.verdict === 'not-buildable' ? 'the web is too narrow' : '',
        conditions: step.verdict === 'with-conditions' ? [makeCondition(`condition-${at}`)] : [],
        madeBy: rights.userId,
        madeByName: 'Joss Pell',
        madeAt: `2027-03-02T09:00:00.${String(at).padStart(3, '0')}Z`,
        contentHash: hashDeclaredContent(snapshot),
      }
      return withVoids(snapshot, { ...snapshot, declarations: [...snapshot.declarations, declaration] })
    }
    case 'review': {
      const actor = ACTORS[step.actor]
      if (!isAllowed(actor, 'review:declare', subject) || isAuthor(snapshot, actor.userId)) return snapshot
      const review = {
        id: `review-${snapshot.reviews.length}`,
        userId: actor.userId,
        name: actor.userId,
        role: actor.memberships[0]?.role ?? '',
        note: '',
        madeAt: '2027-03-02T09:00:00.000Z',
        contentHash: hashDeclaredContent(snapshot),
        withdrawnAt: null,
      }
      return withVoids(snapshot, { ...snapshot, reviews: [...snapshot.reviews, review] })
    }
    case 'decide': {
      if (!isAllowed(ACTORS[step.actor], 'condition:decide', subject)) return snapshot
      const last = snapshot.declarations.at(-1)
      if (last === undefined) return snapshot
      const conditions = last.conditions.map((condition) => ({ ...condition, state: step.state }))
      const declarations = [...snapshot.declarations.slice(0, -1), { ...last, conditions }]
      return withVoids(snapshot, { ...snapshot, declarations })
    }
    case 'take-off': {
      if (!isAllowed(ACTORS[step.actor], 'release:choose-fabricators', subject)) return snapshot
      const { companyId, companyName } = FABRICATORS[step.company]
      const others = snapshot.takenOff.filter((entry) => entry.companyId !== companyId)
      const isOff = others.length < snapshot.takenOff.length
      const entry = {
        companyId,
        companyName,
        reason: 'not this lot',
        byName: 'Ines Calder',
        at: '2027-03-02T09:00:00.000Z',
      }
      return withVoids(snapshot, { ...snapshot, takenOff: isOff ? others : [...others, entry] })
    }
    case 'thread': {
      if (!isAllowed(FABRICATOR, 'revision:raise-query', subject)) return snapshot
      const thread: ReviewThread = {
        id: 'thread-1',
        kind: step.thread,
        state: step.state,
        title: 'Which face carries the stiffener?',
        anchor: { kind: 'revision', id: 'revision-b', label: 'revision' },
        audienceCompanyId: BRACKENFOLD,
        openedBy: 'fabricator',
        openedByName: 'Joss Pell',
        openedAt: '2027-03-01T10:00:00.000Z',
        openedByCompanyId: BRACKENFOLD,
        openedByCompanyName: 'Brackenfold Circuits',
        comments: [],
        closed: null,
      }
      return withVoids(snapshot, { ...snapshot, threads: [thread] })
    }
    case 'waive': {
      const result = snapshot.evaluation?.results.items.find(({ itemId }) => itemId === 'bend-strain')
      const item = snapshot.items.find(({ id }) => id === 'bend-strain')
      if (result === undefined || item === undefined) return snapshot
      if (!isAllowed(ACTORS[step.proposer], 'waiver:propose', subject)) return snapshot
      const approver = ACTORS[step.approver]
      const proposedBy = ACTORS[step.proposer].userId
      const role = approver.memberships[0]?.role ?? ''
      const whyNot = explainNoApproval(snapshot, item, { proposedBy, userId: approver.userId, role })
      const waiver = { ...subject, kind: 'waiver', isIndependent: whyNot === '' } as const
      if (!isAllowed(approver, 'waiver:approve', waiver)) return snapshot
      const waivers = [
        {
          id: `waiver-${snapshot.waivers.length}`,
          itemId: 'bend-strain',
          state: 'approved' as const,
          reason: 'Tested',
          proposedBy,
          proposedByName: proposedBy,
          proposedAt: '2027-03-02T09:00:00.000Z',
          decidedBy: approver.userId,
          decidedByName: approver.userId,
          decidedAsRole: role,
          decidedAt: '2027-03-02T10:00:00.000Z',
          decisionNote: '',
          basisHash: hashWaiverBasis(result),
        },
      ]
      return withVoids(snapshot, { ...snapshot, waivers })
    }
    default:
      return settle(snapshot, step, withVoids)
  }
}
