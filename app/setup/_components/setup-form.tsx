'use client'

import { useRouter } from 'next/navigation'
import { FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { paths } from '@/lib/addresses'
import { firstAdminInput } from '@/lib/inputs'
import { createFirstAdmin } from '../actions'

export function SetupForm() {
  const router = useRouter()
  const { form, submit, isPending, refusal } = useActionForm({
    schema: firstAdminInput,
    action: createFirstAdmin,
    defaultValues: {
      workspaceName: '',
      companyName: '',
      projectName: '',
      name: '',
      email: '',
      password: '',
      setupCode: '',
    },
    onDone: (value) => router.push(paths.project(value.projectId)),
  })
  const { control } = form
  return (
    <form className="form" onSubmit={submit}>
      <FormText
        control={control}
        name="setupCode"
        label="Set-up code"
        autoComplete="one-time-code"
        autoFocus
        hint="Printed where the server was started, and kept in the file secrets/setup-code of its data folder."
      />
      <FormText control={control} name="workspaceName" label="Name of the workspace" />
      <FormText control={control} name="companyName" label="Your company" />
      <FormText control={control} name="projectName" label="First project" />
      <FormText control={control} name="name" label="Your name" autoComplete="name" />
      <FormText control={control} name="email" label="Your e-mail address" type="email" autoComplete="email" />
      <FormText
        control={control}
        name="password"
        label="Password"
        type="password"
        autoComplete="new-password"
        hint="At least 12 characters; length matters more than symbols. You also use it to sign revisions."
      />
      <FormFoot refusal={refusal} isPending={isPending} weight="strong" label="Set up" pendingLabel="Setting up…" />
    </form>
  )
}
