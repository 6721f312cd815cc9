'use client'

import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { FormSelect } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { confirmCompany } from '@/app/companies/actions'
import type { ListedCompanyView } from '@/lib/data'
import { confirmCompanyInput, OWN_COMPANY } from '@/lib/inputs'

interface UnconfirmedCompanyProps {
  readonly listed: ListedCompanyView
  readonly known: readonly { readonly value: string; readonly label: string }[]
}

/** A name that somebody typed: the admin says which company it stands for. */
export function UnconfirmedCompany({ listed, known }: UnconfirmedCompanyProps) {
  const { company, project, people } = listed
  const { form, submit, isPending, refusal } = useActionForm({
    schema: confirmCompanyInput,
    action: confirmCompany,
    defaultValues: { companyId: company.id, knownCompanyId: OWN_COMPANY },
  })
  const chosen = form.watch('knownCompanyId')
  return (
    <>
      <h3>
        {company.name} <span className="muted">{project === null ? '' : `in ${project.name} only`}</span>
      </h3>
      <p>
        {people.length === 0
          ? 'Nobody has joined it yet.'
          : `Its people: ${people.map(({ user, email }) => `${user.name} (${email})`).join(', ')}. Verify them first.`}
      </p>
      <form className="form" onSubmit={submit}>
        <FormSelect
          control={form.control}
          name="knownCompanyId"
          label="Same company as"
          options={[{ value: OWN_COMPANY, label: 'a company of its own' }, ...known]}
          hint="If it is a known company, its people become members of that company with no rights over its sheets, and the company is asked whether it takes part."
        />
        <FormError refusal={refusal} />
        <div className="row">
          <Button type="submit" isPending={isPending} pendingLabel="Confirming…">
            {chosen === OWN_COMPANY || chosen === undefined
              ? `Confirm ${company.name}`
              : `Confirm that ${company.name} is that company`}
          </Button>
        </div>
      </form>
    </>
  )
}
