'use client'

import type { DefaultValues, FieldPath, FieldValues } from 'react-hook-form'
import type { z } from 'zod'
import type { Action } from './action-result'
import { FormTextArea } from './form-fields'
import { FormFoot } from './form-foot'
import { useActionForm } from './use-action-form'

interface ReasonFormProps<TIn extends FieldValues & { reason: string }, TOut, TValue> {
  readonly schema: z.ZodType<TOut, TIn>
  readonly action: Action<TValue>
  /** All that is sent beside the reason. */
  readonly values: Omit<TIn, 'reason' | 'requestKey'>
  /** Over the text. */
  readonly asks: string
  readonly isOptional?: boolean
  /** On the button. */
  readonly label: string
  readonly pendingLabel?: string
  readonly onClose: () => void
}

/** An act that takes a reason and nothing else. */
export function ReasonForm<TIn extends FieldValues & { reason: string }, TOut, TValue>({
  schema,
  action,
  values,
  asks,
  isOptional = false,
  onClose,
  ...foot
}: ReasonFormProps<TIn, TOut, TValue>) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema,
    action,
    defaultValues: { ...values, reason: '' } as unknown as DefaultValues<TIn>,
    onDone: onClose,
  })
  return (
    <form className="form no-print" onSubmit={submit}>
      <FormTextArea
        control={form.control}
        // The library's paths over a type parameter do not know the field.
        name={'reason' as FieldPath<TIn>}
        label={asks}
        rows={2}
        isOptional={isOptional}
      />
      <FormFoot refusal={refusal} isPending={isPending} onCancel={onClose} {...foot} />
    </form>
  )
}
