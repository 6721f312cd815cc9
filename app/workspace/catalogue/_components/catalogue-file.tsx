'use client'

import { Button, LinkButton } from '@/app/_components/ui/button'
import { FileField } from '@/app/_components/ui/file-field'
import { FormError } from '@/app/_components/ui/form-error'
import { FormText } from '@/app/_components/ui/form-fields'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import { useFilePreview } from '@/app/_components/ui/use-file-preview'
import { paths } from '@/lib/addresses'
import type { CatalogueImportView } from '@/lib/data'
import { countOf } from '@/lib/engine/units'
import { importCatalogueInput } from '@/lib/inputs'
import { importCatalogue, previewCatalogue } from '../actions'

interface Previewed {
  readonly text: string
  readonly preview: CatalogueImportView
}

/** The catalogue out to another workspace, and in from one, by way of a preview that writes nothing. */
export function CatalogueFile() {
  const { field, shown, look, forget, isPending, refusal } = useFilePreview<CatalogueImportView, Previewed>(
    previewCatalogue,
  )
  const lookAtText = () =>
    look(async (file) => {
      const text = await file.text()
      return { input: { text }, show: (preview) => ({ text, preview }) }
    })
  return (
    <div className="stack no-print">
      <div className="row">
        <LinkButton href={paths.catalogueFile()} download>
          Save as a file
        </LinkButton>
      </div>
      <FileField
        label="Catalogue file"
        hint="Own items, changes of delivered ones, limits and profiles, as another workspace saved them. It replaces this catalogue."
        accept=".json"
        {...field}
      />
      <FormError refusal={refusal} />
      <div className="row">
        <Button isPending={isPending} pendingLabel="Reading…" onPress={lookAtText}>
          Show what the file would change
        </Button>
      </div>
      {shown !== null && <ImportForm {...shown} onDone={forget} />}
    </div>
  )
}

function ImportForm({ text, preview, onDone }: Previewed & { readonly onDone: () => void }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: importCatalogueInput,
    action: importCatalogue,
    defaultValues: { seenVersion: preview.version, text, reason: '' },
    onDone,
  })
  const { ownItems, itemChanges, limits, profiles } = preview.counts
  return (
    <form className="form" onSubmit={submit} aria-label="Import the catalogue">
      <p>
        The file holds {countOf(ownItems, 'own item')}, {countOf(itemChanges, 'changed item')},{' '}
        {countOf(limits, 'limit')} and {countOf(profiles, 'profile')}.
      </p>
      {preview.changes.length === 0 ? (
        <p>Nothing would change.</p>
      ) : (
        <>
          <ul className="changes">
            {preview.changes.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <FormText control={form.control} name="reason" label="Why it is imported" />
          <FormError refusal={refusal} />
          <div className="row">
            <Button type="submit" weight="strong" isPending={isPending} pendingLabel="Importing…">
              Import as a new version
            </Button>
          </div>
        </>
      )}
    </form>
  )
}
