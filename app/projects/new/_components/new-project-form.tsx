'use client'

import { useRouter } from 'next/navigation'
import { FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { paths } from '@/lib/addresses'
import { projectInput } from '@/lib/inputs'
import { createProject } from '../../actions'

export function NewProjectForm() {
  const router = useRouter()
  const { form, submit, isPending, refusal } = useActionForm({
    schema: projectInput,
    action: createProject,
    defaultValues: { name: '', description: '' },
    onDone: (value) => router.push(paths.project(value.projectId)),
  })
  return (
    <form className="form" onSubmit={submit}>
      <FormText control={form.control} name="name" label="Name" autoFocus />
      <FormTextArea control={form.control} name="description" label="Purpose" rows={3} isOptional />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Create the project"
        pendingLabel="Creating…"
      />
    </form>
  )
}
