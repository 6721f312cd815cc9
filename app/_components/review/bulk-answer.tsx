'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { RadioField } from '@/app/_components/ui/choice-fields'
import { FormError } from '@/app/_components/ui/form-error'
import { TextField } from '@/app/_components/ui/text-field'
import { useAction } from '@/app/_components/ui/use-action'
import type { RevisionView } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { answerItems } from './actions'
import { listBulkStates } from './bulk-states'
import { ANSWER_WORDS } from './words'

type Item = RevisionView['items'][number]
type State = ReturnType<typeof listBulkStates>['states'][number]

interface BulkAnswerProps {
  readonly revisionId: string
  readonly chosen: readonly Item[]
  /** Those that are shown, not answered, and the person's to answer. */
  readonly open: readonly Item[]
  readonly onChoose: (items: readonly Item[]) => void
  readonly onLeave: () => void
}

/** One answer with one reason to all items that are chosen. */
export function BulkAnswer({ revisionId, chosen, open, onChoose, onLeave }: BulkAnswerProps) {
  const [state, setState] = useState<State | null>(null)
  const [reason, setReason] = useState('')
  const { send, isPending, refusal } = useAction(answerItems)
  const { states, withoutMeets } = listBulkStates(chosen)
  const picked = state !== null && states.includes(state) ? state : null
  const answer = () => {
    if (picked === null) return
    send(
      {
        revisionId,
        items: chosen.map(({ itemId, answerVersion }) => ({ itemId, seenVersion: answerVersion })),
        state: picked,
        reason,
      },
      () => {
        onChoose([])
        setReason('')
        setState(null)
      },
    )
  }
  return (
    <section className="stack no-print" aria-label="Answer several items">
      <p className="small" role="status">
        {chosen.length === 0
          ? 'Choose items by the box in front of each question.'
          : `${countOf(chosen.length, 'item')} chosen.`}
      </p>
      <div className="row">
        <Button isDisabled={open.length === 0} onPress={() => onChoose(open)}>
          Choose the {open.length} unanswered shown
        </Button>
        <Button isDisabled={chosen.length === 0} onPress={() => onChoose([])}>
          Choose none
        </Button>
      </div>
      {chosen.length > 0 && (
        <>
          <RadioField
            label="These items are"
            value={picked}
            onChange={setState}
            options={states.map((value) => ({
              value,
              label: value === 'open' ? 'open: not answered yet' : ANSWER_WORDS[value],
            }))}
            {...(withoutMeets === 0
              ? {}
              : {
                  hint: `${countOf(withoutMeets, 'item')} cannot be answered “${ANSWER_WORDS.meets}” together with others: a calculation says otherwise, or the answer has to say where you looked.`,
                })}
          />
          <TextField label="Reason or remark, the same for all" isOptional value={reason} onChange={setReason} />
        </>
      )}
      <FormError refusal={refusal} />
      <div className="row">
        <Button weight="strong" isPending={isPending} isDisabled={picked === null} onPress={answer}>
          Record the answer to {countOf(chosen.length, 'item')}
        </Button>
        <Button onPress={onLeave} isDisabled={isPending}>
          Done
        </Button>
      </div>
    </section>
  )
}
