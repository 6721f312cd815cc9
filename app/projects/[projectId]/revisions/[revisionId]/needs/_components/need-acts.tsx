'use client'

import { useState } from 'react'
import { acceptNeed, dropNeed, reportNeed } from '@/app/_components/review/actions'
import { UploadForm } from '@/app/_components/review/upload-form'
import { Button } from '@/app/_components/ui/button'
import { SideDialog } from '@/app/_components/ui/dialog'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { NeedView } from '@/lib/data'
import { acceptNeedInput, dropNeedInput, reportNeedInput } from '@/lib/inputs'

interface NeedActsProps {
  readonly revisionId: string
  readonly need: NeedView
  readonly maxFileBytes: number
}

const TITLES = { report: 'Report a result', accept: 'Accept the result', drop: 'Drop the need' } as const
type Act = keyof typeof TITLES

/** What the reader may do about one need. */
export function NeedActs({ revisionId, need, maxFileBytes }: NeedActsProps) {
  const [act, setAct] = useState<Act | null>(null)
  const acts: readonly Act[] = [
    ...(need.mayReport ? ['report' as const] : []),
    ...(need.mayAccept ? ['accept' as const] : []),
    ...(need.mayDrop ? ['drop' as const] : []),
  ]
  const close = () => setAct(null)
  return (
    <div className="row no-print">
      {acts.map((one) => (
        <Button key={one} weight="quiet" aria-label={`${TITLES[one]}: need ${need.number}`} onPress={() => setAct(one)}>
          {TITLES[one]}
        </Button>
      ))}
      <SideDialog
        title={act === null ? '' : `${TITLES[act]}: need ${need.number}`}
        isOpen={act !== null}
        onOpenChange={(isOpen) => {
          if (!isOpen) close()
        }}
      >
        {act === 'report' && (
          <div className="stack">
            <UploadForm
              purpose="attachment"
              input={{ revisionId, target: { kind: 'need', needId: need.id } }}
              label="Result file"
              hint="A test report, a measurement, a calculation."
              buttonLabel="Attach"
              maxBytes={maxFileBytes}
            />
            <ReportForm need={need} onDone={close} />
          </div>
        )}
        {act === 'accept' && <AcceptForm need={need} onDone={close} />}
        {act === 'drop' && <DropForm need={need} onDone={close} />}
      </SideDialog>
    </div>
  )
}

interface FormProps {
  readonly need: NeedView
  readonly onDone: () => void
}

function ReportForm({ need, onDone }: FormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: reportNeedInput,
    action: reportNeed,
    defaultValues: { needId: need.id, seenVersion: need.version, result: need.result },
    onDone,
  })
  return (
    <form className="form" onSubmit={submit}>
      <FormTextArea control={form.control} name="result" label="What came of it" rows={3} />
      <FormFoot refusal={refusal} isPending={isPending} label="Report the result" pendingLabel="Saving…" />
    </form>
  )
}

function AcceptForm({ need, onDone }: FormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: acceptNeedInput,
    action: acceptNeed,
    defaultValues: { needId: need.id, seenVersion: need.version, reason: '' },
    onDone,
  })
  return (
    <form className="form" onSubmit={submit}>
      <p>{need.result}</p>
      <FormTextArea control={form.control} name="reason" label="Remark" rows={2} isOptional />
      <FormFoot refusal={refusal} isPending={isPending} label="Accept the result" pendingLabel="Saving…" />
    </form>
  )
}

function DropForm({ need, onDone }: FormProps) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: dropNeedInput,
    action: dropNeed,
    defaultValues: { needId: need.id, seenVersion: need.version, reason: '' },
    onDone,
  })
  return (
    <form className="form" onSubmit={submit}>
      <FormTextArea control={form.control} name="reason" label="Reason" rows={2} autoFocus />
      <FormFoot refusal={refusal} isPending={isPending} label="Drop the need" pendingLabel="Saving…" />
    </form>
  )
}
