'use client'

import type { UseFormReturn } from 'react-hook-form'
import type { z } from 'zod'
import { FormCheckbox, FormNumber, FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import type { releaseInput } from '@/lib/inputs'
import { RELEASE_PURPOSE_WORDS, RELEASE_PURPOSES } from '@/lib/review'

const PURPOSES = RELEASE_PURPOSES.map((value) => ({ value, label: RELEASE_PURPOSE_WORDS[value] }))

interface ReleaseTermsFieldsProps {
  form: UseFormReturn<z.input<typeof releaseInput>, unknown, z.output<typeof releaseInput>>
  replaces: string | null
}

/** For what the revision is released, within which limits, in place of what and why. */
export function ReleaseTermsFields({ form: { control, watch }, replaces }: ReleaseTermsFieldsProps) {
  return (
    <>
      <FormSelect control={control} name="purpose" label="Released for" options={PURPOSES} />
      <FormCheckbox control={control} name="isConditional">
        Conditional: within a limit of quantity or date
      </FormCheckbox>
      {watch('isConditional') === true && (
        <>
          <FormNumber control={control} name="quantityLimit" label="At most" unit="parts" isOptional />
          <FormText control={control} name="validUntil" label="Last day" type="date" isOptional />
          <FormTextArea control={control} name="conditions" label="Conditions" rows={2} isOptional />
        </>
      )}
      <FormText control={control} name="changeNumber" label="Change number" isOptional maxLength={60} />
      <FormTextArea
        control={control}
        name="reason"
        label="Reason for this revision"
        rows={2}
        isOptional={replaces === null}
        {...(replaces === null ? {} : { hint: `It replaces revision ${replaces}, which becomes obsolete.` })}
      />
      <FormText
        control={control}
        name="effectivity"
        label="Takes effect from"
        isOptional
        hint="Lot, serial number or date."
      />
    </>
  )
}
