import { describe, expect, it } from 'vitest'
import {
  CONCERNS_FABRICATORS,
  describeAction,
  listActionsOn,
  TRAIL_WORDS,
  type TrailAction,
  type TrailNote,
} from '@/lib/review'

describe('the words of the trail', () => {
  it.each(Object.keys(TRAIL_WORDS))('%s reads as a sentence even of a record that has no details', (action) => {
    const sentence = describeAction(action, '{}')
    expect(sentence).toMatch(/\w/)
    expect(sentence).not.toMatch(/undefined|null|\[object/)
  })

  it('read records of earlier versions as they read then', () => {
    expect(describeAction('design-saved', '{"designVersion":2,"changeCount":1,"changes":["x"]}')).toBe(
      'changed the design (one input)',
    )
    expect(describeAction('stage-moved', '{"from":"preparing","to":"early-review","reason":""}')).toBe(
      'moved the revision from preparing to early review',
    )
    expect(describeAction('limit-set', '{"key":"minimum-bend-ratio"}')).toBe('set the limit minimum-bend-ratio')
    expect(describeAction('sessions-ended', '{"count":2,"exceptHere":true}')).toBe('signed out all their other devices')
    expect(describeAction('word-of-another-version', '{}')).toBe('word of another version')
  })

  it('do not take a record with details that are not its own', () => {
    const subject = { kind: 'session', id: 's' } as const
    const notes: TrailNote[] = [
      { action: 'signed-out', subject, details: { device: 'a browser' } },
      // @ts-expect-error A detail that the word does not have.
      { action: 'signed-out', subject, details: { device: 'a browser', method: 'password' } },
      // @ts-expect-error A detail of another type.
      { action: 'signed-out', subject, details: { device: 3 } },
      // @ts-expect-error No details where the word has some.
      { action: 'signed-out', subject },
      // @ts-expect-error Another kind of thing.
      { action: 'signed-out', subject: { kind: 'account', id: 'a' }, details: { device: 'a browser' } },
      // @ts-expect-error A word that there is not.
      { action: 'signed-away', subject, details: {} },
    ]
    expect(notes.map(({ action }) => action).filter((action: TrailAction) => action in TRAIL_WORDS)).toHaveLength(5)
  })

  it('say of which acts a fabricator reads in the timeline, and what a live page follows', () => {
    expect(CONCERNS_FABRICATORS).toEqual([
      'revision-created',
      'design-saved',
      'design-imported',
      'stage-moved',
      'revision-released',
    ])
    expect(listActionsOn('thread')).toContain('comment-edited')
    expect(listActionsOn('thread', 'proposal')).toHaveLength(12)
  })
})
