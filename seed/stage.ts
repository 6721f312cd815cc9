import {
  type Actor,
  type ActResult,
  advanceRevision,
  answerItem,
  closeThread,
  decideWaiver,
  declareBuildable,
  declareReviewed,
  getRevision,
  openThread,
  proposeWaiver,
  replyToThread,
  sendBackRevision,
} from '@/lib/data'
import type { AnswerItemInput, OpenThreadInput } from '@/lib/inputs'
import { DEMO_PASSWORD } from './sign-ins'
import type { StoryClock } from './story-clock'

/** Thrown when the application refuses an act of the scenario: the two no longer fit together. */
export class StoryError extends Error {}

/** What a person says about an item, by the item's id. */
export type Answers = Readonly<Record<string, readonly [state: AnswerItemInput['state'], reason: string]>>

/**
 * What people do in the scenario, through the same functions as the screens. Each act takes its moment from the story's
 * clock and reads the version that the person would have seen.
 */
export interface Stage {
  readonly clock: StoryClock
  readonly carryOut: <T>(what: string, act: () => Promise<ActResult<T>>) => Promise<T>
  readonly answer: (actor: Actor, revisionId: string, answers: Answers) => Promise<void>
  readonly advance: (actor: Actor, revisionId: string, note?: string) => Promise<void>
  readonly sendBack: (actor: Actor, revisionId: string, reason: string) => Promise<void>
  readonly open: (actor: Actor, thread: Omit<OpenThreadInput, 'requestKey'>) => Promise<string>
  readonly reply: (actor: Actor, threadId: string, text: string, isAnswer?: boolean) => Promise<string>
  readonly waive: (waiver: WaiverStory) => Promise<void>
  /** Without conditions it is a plain yes. */
  readonly declare: (actor: Actor, revisionId: string, conditions?: readonly string[]) => Promise<void>
  readonly review: (actor: Actor, revisionId: string, note: string) => Promise<void>
  /** Closes a thread by what changed in the design since, where its sentence holds a word. */
  readonly close: (actor: Actor, thread: ClosedThread) => Promise<void>
}

export interface ClosedThread {
  readonly revisionId: string
  readonly threadId: string
  readonly reason: string
  readonly changed: string
}

export interface WaiverStory {
  readonly revisionId: string
  readonly itemId: string
  readonly proposedBy: Actor
  readonly reason: string
  readonly decision?: { readonly by: Actor; readonly decision: 'approve' | 'decline'; readonly reason: string }
}

export function setStage(clock: StoryClock): Stage {
  async function carryOut<T>(what: string, act: () => Promise<ActResult<T>>): Promise<T> {
    clock.pause()
    const result = await act()
    if (result.ok) return result.value
    const { refusal } = result
    const issues = 'issues' in refusal ? refusal.issues.map(({ path, message }) => `${path.join('.')} ${message}`) : []
    const blockers = refusal.kind === 'blocked' ? refusal.blockers.map(({ sentence }) => sentence) : []
    throw new StoryError([`${what}: ${refusal.message}`, ...issues, ...blockers].join('\n  '))
  }

  return {
    clock,
    carryOut,
    async answer(actor, revisionId, answers) {
      const { items } = await getRevision(actor, revisionId)
      for (const [itemId, [state, reason]] of Object.entries(answers)) {
        const item = items.find((candidate) => candidate.itemId === itemId)
        if (item === undefined) throw new StoryError(`the catalogue has no item "${itemId}"`)
        const seenVersion = item.answerVersion
        await carryOut(`answer ${itemId} as ${state}`, () =>
          answerItem(actor, { revisionId, itemId, state, reason, seenVersion }),
        )
      }
    },
    async advance(actor, revisionId, note) {
      const { version: seenVersion, stage } = await getRevision(actor, revisionId)
      await carryOut(`advance from ${stage}`, () =>
        advanceRevision(actor, { revisionId, seenVersion, ...(note === undefined ? {} : { note }) }),
      )
    },
    async sendBack(actor, revisionId, reason) {
      const { version: seenVersion } = await getRevision(actor, revisionId)
      await carryOut('send back', () => sendBackRevision(actor, { revisionId, seenVersion, reason }))
    },
    async open(actor, thread) {
      return (await carryOut(`open "${thread.title}"`, () => openThread(actor, thread))).threadId
    },
    async reply(actor, threadId, text, isAnswer = false) {
      return (await carryOut('reply', () => replyToThread(actor, { threadId, text, isAnswer }))).commentId
    },
    async waive({ revisionId, itemId, proposedBy, reason, decision }) {
      const { waiverId } = await carryOut(`propose a waiver of ${itemId}`, () =>
        proposeWaiver(proposedBy, { revisionId, itemId, reason }),
      )
      if (decision === undefined) return
      await carryOut(`decide on the waiver of ${itemId}`, () =>
        decideWaiver(decision.by, {
          waiverId,
          decision: decision.decision,
          reason: decision.reason,
          password: DEMO_PASSWORD,
        }),
      )
    },
    async review(actor, revisionId, note) {
      const { version: seenVersion } = await getRevision(actor, revisionId)
      await carryOut('declare reviewed', () =>
        declareReviewed(actor, { revisionId, seenVersion, note, password: DEMO_PASSWORD }),
      )
    },
    async declare(actor, revisionId, conditions = []) {
      const { version: seenVersion } = await getRevision(actor, revisionId)
      await carryOut('declare buildable', () =>
        declareBuildable(actor, {
          revisionId,
          seenVersion,
          verdict: conditions.length === 0 ? 'buildable' : 'with-conditions',
          note: '',
          conditions: conditions.map((text) => ({ text, field: '', value: '' })),
          password: DEMO_PASSWORD,
        }),
      )
    },
    async close(actor, { revisionId, threadId, reason, changed }) {
      const { threads } = await getRevision(actor, revisionId)
      const thread = threads.find(({ id }) => id === threadId)
      if (thread === undefined) throw new StoryError(`there is no thread ${threadId}`)
      const places = (thread.doneOptions?.changes ?? [])
        .filter(({ sentence }) => sentence.includes(changed))
        .map(({ place }) => place)
      if (places.length === 0) throw new StoryError(`nothing about "${changed}" changed since "${thread.title}"`)
      await carryOut(`close "${thread.title}"`, () =>
        closeThread(actor, { threadId, seenVersion: thread.version, reason, done: { kind: 'fields', places } }),
      )
    },
  }
}
