'use client'

import { useState } from 'react'
import { Button, LinkButton } from '@/app/_components/ui/button'
import { FileField } from '@/app/_components/ui/file-field'
import { FormError } from '@/app/_components/ui/form-error'
import { SelectField } from '@/app/_components/ui/select-field'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { uploadAction } from '@/app/_components/ui/upload-action'
import { useFilePreview } from '@/app/_components/ui/use-file-preview'
import { paths } from '@/lib/addresses'
import type { SheetFilePreview } from '@/lib/data'
import type { TableSheetKind } from '@/lib/fabrication'
import { FilePreview } from './file-preview'

interface FileExchangeProps {
  readonly companyId: string
  readonly kind: TableSheetKind
  readonly mayEdit: boolean
  readonly seenVersion: number
  /** A file cannot be taken over what is being edited. */
  readonly hasUnsaved: boolean
  readonly today: string
}

const MODES = [
  { value: 'replace', label: 'replace all rows' },
  { value: 'add-and-change', label: 'add to and update the rows' },
]

/** A sheet's rows out to a spreadsheet program and back, by way of a preview that writes nothing. */
export function FileExchange({ companyId, kind, mayEdit, seenVersion, hasUnsaved, today }: FileExchangeProps) {
  const { unit } = useLengthUnit()
  return (
    <details className="no-print">
      <summary>
        {mayEdit ? 'Files: import rows from a spreadsheet, or export them' : 'Save as a spreadsheet file'}
      </summary>
      <div className="stack above-wide">
        <div className="row">
          <LinkButton href={paths.sheetFile(companyId, kind, 'xlsx', unit)} download>
            Save as XLSX
          </LinkButton>
          <LinkButton href={paths.sheetFile(companyId, kind, 'csv', unit)} download>
            Save as CSV
          </LinkButton>
        </div>
        {mayEdit &&
          (hasUnsaved ? (
            <p className="small muted">Save or undo your changes before you import rows from a file.</p>
          ) : (
            <ImportForm companyId={companyId} kind={kind} seenVersion={seenVersion} today={today} />
          ))}
      </div>
    </details>
  )
}

const previewSheetFile = uploadAction<SheetFilePreview>('sheet-preview')

interface Previewed {
  readonly preview: SheetFilePreview
  readonly file: File
  readonly mode: string
}

function ImportForm({ companyId, kind, seenVersion, today }: Omit<FileExchangeProps, 'mayEdit' | 'hasUnsaved'>) {
  const [mode, setMode] = useState('replace')
  const { field, shown, look, forget, isPending, refusal } = useFilePreview<SheetFilePreview, Previewed>(
    previewSheetFile,
  )
  const lookAtRows = () =>
    look(async (file) => ({
      input: { companyId, kind, fileName: file.name, file, mode },
      show: (preview) => ({ preview, file, mode }),
    }))
  return (
    <>
      <div className="form-grid">
        <FileField
          label="CSV or XLSX file"
          hint="The first row holds this sheet’s headings, in any order; a length’s heading may name its unit (mm, µm, mil, in). Formulas are refused: use values."
          accept=".csv,.tsv,.txt,.xlsx"
          {...field}
        />
        <SelectField
          label="Rows of the file"
          value={mode}
          options={MODES}
          onChange={(chosen) => {
            setMode(String(chosen))
            forget()
          }}
        />
      </div>
      <FormError refusal={refusal} />
      <div className="row">
        <Button isPending={isPending} pendingLabel="Reading…" onPress={lookAtRows}>
          Show what the file would change
        </Button>
      </div>
      {shown !== null && (
        <FilePreview
          preview={shown.preview}
          input={{
            companyId,
            kind,
            fileName: shown.preview.fileName,
            file: shown.file,
            mode: shown.mode,
          }}
          seenVersion={seenVersion}
          today={today}
          onDiscard={forget}
        />
      )}
    </>
  )
}
