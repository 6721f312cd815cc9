'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { RadioField } from '@/app/_components/ui/choice-fields'
import { FileField } from '@/app/_components/ui/file-field'
import { FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { SelectField } from '@/app/_components/ui/select-field'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { paths } from '@/lib/addresses'
import type { CopyableRevisionView, KeptConstructionView } from '@/lib/data'
import { decodeUtf8, MAX_DESIGN_CHARACTERS } from '@/lib/engine/design'
import { asFileSize } from '@/lib/engine/units'
import { newRevisionInput } from '@/lib/inputs'
import { createRevision } from '../../../../actions'

interface NewRevisionFormProps {
  projectId: string
  constructions: readonly { id: string; name: string; purpose: string; conductorLayerCount: number }[]
  /** Starting constructions that the workspace keeps. */
  kept: readonly KeptConstructionView[]
  /** Revisions of other projects whose design may be copied. */
  elsewhere: readonly CopyableRevisionView[]
  isElsewhereCut: boolean
  revisions: readonly { id: string; label: string; designName: string }[]
}

const ORIGINS = [
  { value: 'starting-construction', label: 'a starting construction' },
  { value: 'kept-construction', label: 'a construction that the workspace keeps' },
  { value: 'copy', label: 'a copy of a revision' },
  { value: 'copy-elsewhere', label: 'the design of a revision of another project' },
  { value: 'import', label: 'a design file (JSON)' },
  { value: 'blank', label: 'a blank design' },
] as const
type OriginChoice = (typeof ORIGINS)[number]['value']

export function NewRevisionForm({
  projectId,
  constructions,
  kept,
  elsewhere,
  isElsewhereCut,
  revisions,
}: NewRevisionFormProps) {
  const router = useRouter()
  const firstConstruction = constructions[0]?.id ?? ''
  const firstRevision = revisions[0]?.id ?? ''
  const { form, submit, isPending, refusal } = useActionForm({
    schema: newRevisionInput,
    action: createRevision,
    defaultValues: {
      projectId,
      label: '',
      origin:
        revisions.length > 0
          ? { kind: 'copy', revisionId: firstRevision }
          : { kind: 'starting-construction', constructionId: firstConstruction },
    },
    onDone: (value) => router.push(paths.revision(projectId, value.revisionId, 'construction')),
  })
  const origin = form.watch('origin')
  const isElsewhere = origin.kind === 'copy' && elsewhere.some(({ revisionId }) => revisionId === origin.revisionId)
  const hasAny: Partial<Record<OriginChoice, boolean>> = {
    copy: revisions.length > 0,
    'copy-elsewhere': elsewhere.length > 0,
    'kept-construction': kept.length > 0,
  }
  const changeKind = (kind: OriginChoice) => {
    switch (kind) {
      case 'starting-construction':
        return form.setValue('origin', { kind, constructionId: firstConstruction })
      case 'copy':
        return form.setValue('origin', { kind, revisionId: firstRevision })
      case 'copy-elsewhere':
        return form.setValue('origin', { kind: 'copy', revisionId: elsewhere[0]?.revisionId ?? '' })
      case 'kept-construction':
        return form.setValue('origin', { kind, entryId: kept[0]?.entryId ?? '' })
      case 'import':
        return form.setValue('origin', { kind, designText: '' })
      case 'blank':
        return form.setValue('origin', { kind })
    }
  }
  return (
    <form className="form" onSubmit={submit}>
      <FormText control={form.control} name="label" label="Label" hint="As printed on the drawing, e.g. A or B2." />
      <RadioField
        label="Start from"
        value={isElsewhere ? 'copy-elsewhere' : origin.kind}
        onChange={changeKind}
        options={ORIGINS.filter(({ value }) => hasAny[value] !== false)}
      />
      {origin.kind === 'starting-construction' && (
        <RadioField
          label="Starting construction"
          value={origin.constructionId}
          onChange={(constructionId) => form.setValue('origin', { kind: 'starting-construction', constructionId })}
          options={constructions.map(({ id, name, purpose }) => ({ value: id, label: name, note: purpose }))}
        />
      )}
      {origin.kind === 'kept-construction' && (
        <RadioField
          label="Construction"
          value={origin.entryId}
          onChange={(entryId) => form.setValue('origin', { kind: 'kept-construction', entryId })}
          options={kept.map(({ entryId, name, purpose }) => ({ value: entryId, label: name, note: purpose }))}
        />
      )}
      {isElsewhere && (
        <SelectField
          label="Revision to take the design from"
          hint={`The design alone: answers, waivers, artwork and needs stay in the other project, whose trail records the copy.${isElsewhereCut ? ` The newest ${elsewhere.length} are listed; export the design of an older one and import it here.` : ''}`}
          value={origin.revisionId}
          onChange={(revisionId) => form.setValue('origin', { kind: 'copy', revisionId })}
          options={elsewhere.map(({ revisionId, label, designName, projectName }) => ({
            value: revisionId,
            label: `${projectName}, ${label}: ${designName}`,
          }))}
        />
      )}
      {origin.kind === 'copy' && !isElsewhere && (
        <SelectField
          label="Revision to copy"
          value={origin.revisionId}
          onChange={(revisionId) => form.setValue('origin', { kind: 'copy', revisionId })}
          options={revisions.map(({ id, label, designName }) => ({ value: id, label: `${label}: ${designName}` }))}
        />
      )}
      {origin.kind === 'import' && (
        <DesignFile onText={(designText) => form.setValue('origin', { kind: 'import', designText })} />
      )}
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Create revision"
        pendingLabel="Beginning…"
      />
    </form>
  )
}

/** Reads a design file in the browser; the server reads its text again and names each bad field. */
function DesignFile({ onText }: { onText: (text: string) => void }) {
  const [files, setFiles] = useState<readonly File[]>([])
  const [error, setError] = useState<string | undefined>(undefined)
  const read = async (chosen: readonly File[]) => {
    setFiles(chosen)
    setError(undefined)
    onText('')
    const file = chosen[0]
    if (file === undefined) return
    if (file.size > MAX_DESIGN_CHARACTERS * 4) {
      setError(
        `"${file.name}" has ${asFileSize(file.size)}; a design document has at most ${MAX_DESIGN_CHARACTERS / 1e6} million characters`,
      )
      return
    }
    const text = decodeUtf8(new Uint8Array(await file.arrayBuffer()))
    if (typeof text === 'string') onText(text)
    else setError(text.message)
  }
  return (
    <FileField
      label="Design file"
      hint="A design document in JSON, as exported from a revision."
      accept=".json,application/json"
      files={files}
      error={error}
      onChange={read}
    />
  )
}
