'use client'

import { stateNeed } from '@/app/_components/review/actions'
import { Button } from '@/app/_components/ui/button'
import { FormSelect, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { SelectField } from '@/app/_components/ui/select-field'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { stateNeedInput } from '@/lib/inputs'
import { NEED_METHOD_WORDS, NEED_METHODS } from '@/lib/review'

interface NeedFormProps {
  readonly revisionId: string
  readonly items: readonly { readonly itemId: string; readonly question: string }[]
}

const METHODS = NEED_METHODS.map((value) => ({ value, label: NEED_METHOD_WORDS[value] }))

export function NeedForm({ revisionId, items }: NeedFormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: stateNeedInput,
    action: stateNeed,
    defaultValues: { revisionId, text: '', itemIds: [], method: 'test', plannedOn: '' },
  })
  const chosen = form.watch('itemIds') as readonly string[]
  const choose = (itemIds: readonly string[]) => form.setValue('itemIds', [...itemIds], { shouldDirty: true })
  const left = items.filter(({ itemId }) => !chosen.includes(itemId))
  return (
    <form className="form" onSubmit={submit} aria-label="State a need">
      <FormTextArea control={form.control} name="text" label="What the part must do" rows={2} />
      <SelectField
        label="Items that speak of it"
        value=""
        options={[
          { value: '', label: chosen.length === 0 ? 'choose an item' : 'choose another' },
          ...left.map(({ itemId, question }) => ({ value: itemId, label: question })),
        ]}
        onChange={(itemId) => itemId !== '' && choose([...chosen, itemId])}
      />
      {chosen.length > 0 && (
        <ul className="plain-list">
          {items
            .filter(({ itemId }) => chosen.includes(itemId))
            .map(({ itemId, question }) => (
              <li key={itemId} className="row">
                {question}
                <Button
                  weight="quiet"
                  aria-label={`Remove ${question}`}
                  onPress={() => choose(chosen.filter((id) => id !== itemId))}
                >
                  Remove
                </Button>
              </li>
            ))}
        </ul>
      )}
      <FormSelect control={form.control} name="method" label="Shown by" options={METHODS} />
      <FormText control={form.control} name="plannedOn" label="Planned for" type="date" isOptional />
      <FormFoot refusal={refusal} isPending={isPending} label="State the need" pendingLabel="Saving…" />
    </form>
  )
}
