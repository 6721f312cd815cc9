'use client'

import Link from 'next/link'
import { Fragment } from 'react'
import { ActionButton } from '@/app/_components/ui/action-button'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { DecidingLimit, DecidingValue } from '@/app/_components/ui/limit-text'
import { TermText } from '@/app/_components/ui/term-text'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { VerdictMark } from '@/app/_components/ui/verdict-mark'
import { paths } from '@/lib/addresses'
import type { RevisionView, SecondFactorView } from '@/lib/data'
import { BASIS_WORDS, type DecidedOutcome } from '@/lib/engine/results'
import { listStatedInBrief, nameAnswerers, THREAD_KIND_WORDS } from '@/lib/review'
import { removeAttachment } from './actions'
import { AnswerForm } from './answer-form'
import { AnswerMark } from './answer-mark'
import { Reasons } from './comparison-report'
import { FileList } from './file-list'
import type { ItemText } from './item-text'
import { OutcomeTable } from './outcome-table'
import { ThreadForm } from './thread-form'
import { UploadForm } from './upload-form'
import { WaiverPanel } from './waiver-panel'
import { ANSWER_WORDS } from './words'

type Item = RevisionView['items'][number]

export interface ItemContext {
  projectId: string
  revisionId: string
  may: RevisionView['may']
  role: RevisionView['role']
  brief: RevisionView['design']['brief']
  threads: RevisionView['threads']
  fabricators: RevisionView['sharedWith']
  citations: Readonly<Record<string, string>>
  /** What helps with the items that are not met, by item id. */
  whatHelps: Readonly<Record<string, readonly string[]>>
  maxFileBytes: number
  /** Of the person asking: who approves a waiver gives it. */
  factor: SecondFactorView
}

interface ChecklistItemProps {
  item: Item
  text: ItemText
  context: ItemContext
  isOpen: boolean
  onToggle: (isOpen: boolean) => void
  /** Null where nothing is to be chosen, or not this item. */
  isChosen: boolean | null
  onChoose: (itemId: string, isChosen: boolean) => void
}

/** The decided outcome with the smallest margin, worst verdict first: the number that a reader wants on the closed line. */
function findDeciding(item: Item): DecidedOutcome | null {
  const decided = item.result.outcomes.filter((outcome): outcome is DecidedOutcome => outcome.kind === 'decided')
  return decided.find((outcome) => outcome.verdict === item.result.verdict) ?? decided[0] ?? null
}

/** One item: a line that says where it stands, and, opened, everything that it stands on. */
export function ChecklistItem({ item, text, context, isOpen, onToggle, isChosen, onChoose }: ChecklistItemProps) {
  const deciding = findDeciding(item)
  const bodyId = `item-body-${item.itemId}`
  return (
    <article className="item" id={`item-${item.itemId}`} data-open={isOpen || undefined}>
      {isChosen !== null && (
        <div className="item-choice">
          <CheckboxField isSelected={isChosen} onChange={(is) => onChoose(item.itemId, is)}>
            <span className="sr-only">Choose: {text.question}</span>
          </CheckboxField>
        </div>
      )}
      <h3>
        <button
          type="button"
          className="item-line"
          aria-expanded={isOpen}
          aria-controls={bodyId}
          onClick={() => onToggle(!isOpen)}
        >
          <span className="item-question">{text.question}</span>
          <span className="item-number">{deciding !== null && <DecidingValue outcome={deciding} />}</span>
          <span className="item-limit">{deciding !== null && <DecidingLimit outcome={deciding} />}</span>
          <span>
            <VerdictMark verdict={item.follows.length > 0 ? 'follows' : item.result.verdict} />
            {item.result.verdict !== 'not-applicable' && (
              <span className="small muted"> {BASIS_WORDS[item.result.basis]}</span>
            )}
          </span>
          <span className="item-state">
            <AnswerMark state={item.state} />
          </span>
        </button>
      </h3>
      <div id={bodyId} hidden={!isOpen}>
        {isOpen && <ItemBody item={item} text={text} context={context} />}
      </div>
    </article>
  )
}

function ItemBody({ item, text, context }: Pick<ChecklistItemProps, 'item' | 'text' | 'context'>) {
  const { may, projectId, revisionId } = context
  const threads = context.threads.filter((thread) => item.threadIds.includes(thread.id))
  return (
    <div className="item-body stack">
      <p className="lede">{item.result.headline}</p>
      <Family item={item} context={context} />
      <OutcomeTable
        outcomes={item.result.outcomes}
        citations={context.citations}
        hrefOfSpot={(spot) => paths.artworkAt(projectId, revisionId, spot)}
        caption={`Found (${BASIS_WORDS[item.result.basis]}) for: ${text.question}`}
      />
      <WhatHelps texts={context.whatHelps[item.itemId] ?? []} />
      <dl className="terms">
        <dt>why</dt>
        <dd>
          <TermText>{text.why}</TermText>
        </dd>
        <dt>how to check</dt>
        <dd>
          <TermText>{text.howToCheck}</TermText>
        </dd>
        {text.evidence !== null && (
          <>
            <dt>evidence asked for</dt>
            <dd>{text.evidence}</dd>
          </>
        )}
        <dt>applies to</dt>
        <dd>{text.appliesTo}</dd>
        <dt>answered by</dt>
        <dd>
          {nameAnswerers(text.answeredBy)}
          {text.askedOf.length > 0 && `; ask the ${text.askedOf.join(' and the ')}`}
        </dd>
        <dt>severity</dt>
        <dd>{text.severity}</dd>
        {text.becauseOf.length > 0 && (
          <>
            <dt>profiles</dt>
            <dd>{text.becauseOf.join(' ')}</dd>
          </>
        )}
        {text.sources.length > 0 && (
          <>
            <dt>sources</dt>
            <dd>{text.sources.join('; ')}</dd>
          </>
        )}
      </dl>
      <BriefTexts item={item} context={context} />
      <AnswerHistory item={item} />
      <div className="item-acts">
        {item.mayAnswer ? (
          <AnswerForm revisionId={revisionId} item={item} />
        ) : (
          <div className="stack">
            <h4 className="label">Answer</h4>
            <p className="muted small">{item.whyNoAnswer}</p>
          </div>
        )}
        <WaiverPanel revisionId={revisionId} item={item} may={may} factor={context.factor} />
        <div className="stack">
          <h4 className="label">Evidence</h4>
          {item.attachments.length === 0 && <p className="muted small">No file is attached.</p>}
          <FileList
            files={item.attachments}
            hrefOf={paths.attachment}
            {...(item.mayAnswer
              ? {
                  renderAct: (file: Item['attachments'][number]) => (
                    <ActionButton
                      action={removeAttachment}
                      input={{ fileId: file.id }}
                      weight="quiet"
                      confirm={{
                        title: 'Remove the file from this answer?',
                        text: `“${file.fileName}” will no longer be listed. The file and its record are kept.`,
                        label: 'Remove',
                      }}
                    >
                      Remove
                    </ActionButton>
                  ),
                }
              : {})}
          />
          {item.mayAnswer && (
            <UploadForm
              purpose="attachment"
              input={{ revisionId, target: { kind: 'item', itemId: item.itemId } }}
              label="Attach a file"
              hint="A measurement, a photograph, a data sheet, a calculation."
              buttonLabel="Attach"
              maxBytes={context.maxFileBytes}
            />
          )}
        </div>
        <div className="stack">
          <h4 className="label">Threads</h4>
          {threads.length === 0 && <p className="muted small">No comments on this item.</p>}
          <ul className="plain-list">
            {threads.map((thread) => (
              <li key={thread.id}>
                <Link href={paths.thread(projectId, revisionId, thread.id)}>{thread.title}</Link>{' '}
                <span className="muted small">
                  {THREAD_KIND_WORDS[thread.kind].label}, {thread.state}, {thread.openedBy.name}
                </span>
              </li>
            ))}
          </ul>
          {may.comment && (
            <ThreadForm
              revisionId={revisionId}
              anchors={[{ kind: 'item', id: item.itemId, label: text.question }]}
              fabricators={context.fabricators}
              role={context.role}
              mayRaiseQuery={may.raiseQuery}
              isFolded
            />
          )}
        </div>
      </div>
    </div>
  )
}

/** What this item follows from, and what follows from it: one cause, one failure. */
function Family({ item, context }: { item: Item; context: ItemContext }) {
  const link = (itemId: string, question: string) => (
    <Link href={paths.item(context.projectId, context.revisionId, itemId)}>{question}</Link>
  )
  if (item.follows.length === 0 && item.followers.length === 0) return null
  return (
    <dl className="terms">
      {item.follows.length > 0 && (
        <>
          <dt>follows from</dt>
          {item.follows.map(({ itemId, question }) => (
            <dd key={itemId}>{link(itemId, question)}</dd>
          ))}
        </>
      )}
      {item.followers.length > 0 && (
        <>
          <dt>brings with it</dt>
          {item.followers.map(({ itemId, question }) => (
            <dd key={itemId}>{link(itemId, question)}</dd>
          ))}
        </>
      )}
    </dl>
  )
}

/** Cheapest first. */
function WhatHelps({ texts }: { texts: readonly string[] }) {
  if (texts.length === 0) return null
  return (
    <div className="stack">
      <h4 className="label">What helps, cheapest first</h4>
      <ol>
        {texts.map((text) => (
          <li key={text}>
            <TermText>{text}</TermText>
          </li>
        ))}
      </ol>
    </div>
  )
}

/** What the brief says about the item already: it is judged here, and not asked for again. */
function BriefTexts({ item, context }: { item: Item; context: ItemContext }) {
  const stated = listStatedInBrief(item.itemId, context.brief)
  if (stated.length === 0) return null
  return (
    <div className="stack">
      <h4 className="label">
        Stated in the <Link href={paths.revision(context.projectId, context.revisionId, 'brief')}>brief</Link>
      </h4>
      <dl className="terms">
        {stated.map(({ field, label, text }) => (
          <Fragment key={field}>
            <dt>{label}</dt>
            <dd className={text === '' ? 'muted' : 'said'}>{text === '' ? 'not stated' : text}</dd>
          </Fragment>
        ))}
      </dl>
    </div>
  )
}

/** What a statement rests on: sheet, layer, file and its hash. */
function LookedAtLine({ lookedAt }: Pick<NonNullable<Item['answer']>, 'lookedAt'>) {
  if (lookedAt == null) return null
  return (
    <p className="small muted">
      Looked at: {lookedAt.sheet}, {lookedAt.layer}, {lookedAt.fileName} (SHA-256{' '}
      <code>{lookedAt.sha256.slice(0, 12)}</code>…)
    </p>
  )
}

function AnswerHistory({ item }: { item: Item }) {
  if (item.answer === null) return null
  return (
    <div className="answer-record">
      <p>
        <strong>{ANSWER_WORDS[item.answer.state]}</strong>{' '}
        <span className="muted">
          {item.answer.by.name}, <Timestamp at={item.answer.at} />
          {item.carriedFrom !== null && `; carried over from revision ${item.carriedFrom}`}
        </span>
      </p>
      <LookedAtLine lookedAt={item.answer.lookedAt} />
      {item.answer.reason !== '' && <p>{item.answer.reason}</p>}
      {item.setAside !== '' && (
        <p>
          <strong>Check again:</strong> {item.setAside}.
        </p>
      )}
      {item.changedInputs.length > 0 && (
        <div>
          {item.setAside === '' && <p className="small muted">Changed since this answer:</p>}
          <Reasons reasons={item.changedInputs} />
        </div>
      )}
      {item.history.length > 1 && (
        <details>
          <summary className="small">Earlier answers ({item.history.length - 1})</summary>
          <ul className="plain-list small">
            {item.history
              .filter((entry) => entry.version !== item.answer?.version)
              .map((entry) => (
                <li key={entry.version}>
                  {ANSWER_WORDS[entry.state]}: {entry.reason || 'no reason given'}{' '}
                  <span className="muted">
                    {entry.by.name}, <Timestamp at={entry.at} />
                  </span>
                  <LookedAtLine lookedAt={entry.lookedAt} />
                </li>
              ))}
          </ul>
        </details>
      )}
    </div>
  )
}
