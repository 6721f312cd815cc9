import { describe, expect, test } from 'vitest'
import { explainNoAnswer, type ItemSubject, nameAnswerers } from '@/lib/review'
import { BRACKENFOLD, FABRICATOR, LEAD, MEMBER, OBSERVER, OTHER_FABRICATOR, PROJECT } from './snapshot-factory'

const subject: ItemSubject = {
  kind: 'item',
  projectId: PROJECT,
  stage: 'fabricator-review',
  sharedWithCompanyIds: [BRACKENFOLD],
  hasLiveSignature: false,
  answeredBy: ['member'],
}
const ofFabricator: ItemSubject = { ...subject, answeredBy: ['fabricator'] }

describe('who answers an item', () => {
  test('a lead answers what members answer, so the team is named', () => {
    expect(nameAnswerers(['member'])).toBe('the team (lead engineer or member)')
    expect(nameAnswerers(['member', 'lead'])).toBe('the team (lead engineer or member)')
    expect(nameAnswerers(['fabricator'])).toBe('a fabricator with whom the revision is shared')
    expect(nameAnswerers(['member', 'fabricator'])).toBe('the team (lead engineer or member) or a fabricator')
  })

  test('nothing is said to those who can', () => {
    for (const actor of [LEAD, MEMBER]) expect(explainNoAnswer(actor, subject)).toBe('')
    expect(explainNoAnswer(FABRICATOR, ofFabricator)).toBe('')
  })

  test('everybody else is told who can', () => {
    for (const actor of [OBSERVER, FABRICATOR]) {
      expect(explainNoAnswer(actor, subject)).toBe('Answered by the team (lead engineer or member).')
    }
    for (const actor of [LEAD, MEMBER, OBSERVER, OTHER_FABRICATOR]) {
      expect(explainNoAnswer(actor, ofFabricator)).toBe('Answered by a fabricator with whom the revision is shared.')
    }
  })

  test('a stage or a signature that stands in the way is named', () => {
    expect(explainNoAnswer(MEMBER, { ...subject, stage: 'released' })).toMatch(/^The revision is released/)
    const signed = { ...subject, hasLiveSignature: true }
    expect(explainNoAnswer(MEMBER, signed)).toMatch(/only a lead engineer can change this answer now/)
    expect(explainNoAnswer(LEAD, signed)).toBe('')
    // A lead does not answer for a fabricator, signed or not.
    expect(explainNoAnswer(FABRICATOR, { ...ofFabricator, hasLiveSignature: true })).toMatch(/cannot change while/)
  })
})
