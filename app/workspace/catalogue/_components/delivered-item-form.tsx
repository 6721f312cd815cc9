'use client'

import { Controller } from 'react-hook-form'
import type { ItemText } from '@/app/_components/review/item-text'
import { Button } from '@/app/_components/ui/button'
import { FormCheckbox, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useAction } from '@/app/_components/ui/use-action'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { ItemChange } from '@/lib/engine/catalogue'
import { changeDeliveredItemInput } from '@/lib/inputs'
import { changeDeliveredItem } from '../actions'
import { type AnsweringRole, RoleChecks } from './role-checks'

interface DeliveredItemFormProps {
  item: ItemText
  change: ItemChange | null
  version: number
  onClose: () => void
}

const isRole = (role: string): role is AnsweringRole => ['member', 'lead', 'fabricator'].includes(role)

/** Wording, who answers, or whether it is asked at all. What is left as delivered follows later deliveries. */
export function DeliveredItemForm({ item, change, version, onClose }: DeliveredItemFormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: changeDeliveredItemInput,
    action: changeDeliveredItem,
    defaultValues: {
      seenVersion: version,
      change: {
        itemId: item.id,
        isOff: change?.isOff ?? false,
        reason: change?.reason ?? '',
        question: change?.question ?? item.question,
        why: change?.why ?? item.why,
        howToCheck: change?.howToCheck ?? item.howToCheck,
        answeredBy: change?.answeredBy ?? item.answeredBy.filter(isRole),
      },
    },
    onDone: onClose,
  })
  const taking = useAction(changeDeliveredItem)
  const { control } = form
  const takeBack = () => {
    const asDelivered = { isOff: false, question: null, why: null, howToCheck: null, answeredBy: null }
    const input = { itemId: item.id, reason: 'back to what was delivered', ...asDelivered }
    taking.send({ seenVersion: version, change: input }, onClose)
  }
  return (
    <form className="form above below" onSubmit={submit} aria-label={`Change: ${item.question}`}>
      <FormText control={control} name="change.question" label="Question" />
      <FormTextArea control={control} name="change.why" label="Why it matters" rows={3} />
      <FormTextArea control={control} name="change.howToCheck" label="How to check it" rows={3} />
      <Controller
        control={control}
        name="change.answeredBy"
        render={({ field, fieldState }) => (
          <RoleChecks value={field.value ?? []} onChange={field.onChange} error={fieldState.error?.message} />
        )}
      />
      <FormCheckbox control={control} name="change.isOff">
        Switched off: reviews leave it out, and their reports say so
      </FormCheckbox>
      <FormText control={control} name="change.reason" label="Why" hint="Shown with the item and in the report." />
      <FormFoot
        refusal={refusal ?? taking.refusal}
        isPending={isPending}
        weight="strong"
        label="Save"
        pendingLabel="Saving…"
        also={
          change !== null && (
            <Button isPending={taking.isPending} onPress={takeBack}>
              Restore the delivered text
            </Button>
          )
        }
        onCancel={onClose}
      />
    </form>
  )
}
