'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { ReasonForm } from '@/app/_components/ui/reason-form'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { archiveProjectInput, changeProjectInput } from '@/lib/inputs'
import { archiveProject, changeProject } from '../../actions'

interface ProjectSettingsProps {
  readonly projectId: string
  readonly name: string
  readonly description: string
  readonly isArchived: boolean
}

/** Name, purpose and archive: a lead's. */
export function ProjectSettings({ projectId, name, description, isArchived }: ProjectSettingsProps) {
  const [open, setOpen] = useState<'change' | 'archive' | null>(null)
  const close = () => setOpen(null)
  if (open === 'change') {
    return <ChangeForm projectId={projectId} name={name} description={description} onClose={close} />
  }
  if (open === 'archive') {
    return (
      <ReasonForm
        schema={archiveProjectInput}
        action={archiveProject}
        values={{ projectId, isArchived: !isArchived }}
        asks={isArchived ? 'Why it is brought back' : 'Why it is archived; what was released stays within reach'}
        label={isArchived ? 'Bring the project back' : 'Archive the project'}
        pendingLabel="Saving…"
        onClose={close}
      />
    )
  }
  return (
    <div className="row no-print">
      <Button onPress={() => setOpen('change')}>Rename</Button>
      <Button onPress={() => setOpen('archive')}>{isArchived ? 'Bring back' : 'Archive'}</Button>
    </div>
  )
}

function ChangeForm({
  projectId,
  name,
  description,
  onClose,
}: Omit<ProjectSettingsProps, 'isArchived'> & { readonly onClose: () => void }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: changeProjectInput,
    action: changeProject,
    defaultValues: { projectId, seenName: name, name, description, reason: '' },
    onDone: onClose,
  })
  return (
    <form className="form no-print" onSubmit={submit} aria-label="Rename the project">
      <FormText
        control={form.control}
        name="name"
        label="Name"
        hint="The name stays once a revision is released: its drawing and package carry it."
      />
      <FormTextArea control={form.control} name="description" label="Purpose" rows={3} isOptional />
      <FormText control={form.control} name="reason" label="Reason" />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Save"
        pendingLabel="Saving…"
        onCancel={onClose}
      />
    </form>
  )
}
