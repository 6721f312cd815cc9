'use client'

import { FormRadio, FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { RevisionView } from '@/lib/data'
import { answerItemInput } from '@/lib/inputs'
import { needsLookedAt } from '@/lib/review'
import { answerItem } from './actions'
import { ANSWER_WORDS } from './words'

/** A person's answer. Which answers are possible follows from the verdict: a failed calculation is never overruled here. */
export function AnswerForm({ revisionId, item }: { revisionId: string; item: RevisionView['items'][number] }) {
  // What somebody recorded as seen, and what no calculation covers, counts once a named person says where they looked.
  const isStatement = needsLookedAt(item.result, 'meets')
  const { form, submit, isPending, refusal } = useActionForm({
    schema: answerItemInput,
    action: answerItem,
    defaultValues: {
      revisionId,
      itemId: item.itemId,
      seenVersion: item.answerVersion,
      // A waived item still carries the person's own answer beneath the waiver.
      state: item.answer === null || item.answer.state === 'waived' ? 'open' : item.answer.state,
      reason: item.answer?.reason ?? '',
      ...(isStatement
        ? {
            lookedAt: {
              sheet: item.answer?.lookedAt?.sheet ?? '',
              layer: item.answer?.lookedAt?.layer ?? '',
              sha256: item.answer?.lookedAt?.sha256 ?? '',
            },
          }
        : {}),
    },
    onDone: (value) => form.setValue('seenVersion', value.answerVersion),
  })
  const options = item.legalStates
    .filter((state) => state !== 'waived')
    .map((state) => ({ value: state, label: describeAnswer(state) }))
  return (
    <form className="form" onSubmit={submit}>
      <h4 className="label">Your answer</h4>
      <FormRadio
        control={form.control}
        name="state"
        label="This item is"
        options={options}
        {...(item.result.verdict === 'fails'
          ? { hint: 'The computed value does not meet the limit. The design must be changed, or a waiver approved.' }
          : {})}
      />
      {isStatement && (
        <>
          <FormText control={form.control} name="lookedAt.sheet" label="Sheet you looked at" />
          <FormText control={form.control} name="lookedAt.layer" label="Layer or view" />
          <FormSelect
            control={form.control}
            name="lookedAt.sha256"
            label="File"
            options={[
              { value: '', label: item.viewableFiles.length === 0 ? 'none yet: attach the file first' : 'not chosen' },
              ...item.viewableFiles.map(({ fileName, sha256 }) => ({
                value: sha256,
                label: `${fileName} (${sha256.slice(0, 8)})`,
              })),
            ]}
            hint="“Meets” needs sheet, layer and file. The answer lapses when that file goes."
          />
        </>
      )}
      <FormTextArea control={form.control} name="reason" label="Reason or remark" rows={3} isOptional />
      <FormFoot refusal={refusal} isPending={isPending} label="Record the answer" pendingLabel="Recording…" />
    </form>
  )
}

function describeAnswer(state: keyof typeof ANSWER_WORDS): string {
  return state === 'open' ? 'open: not answered yet' : ANSWER_WORDS[state]
}
