'use client'

import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { SideDialog } from '@/app/_components/ui/dialog'
import { FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { CapacityView } from '@/lib/data'
import { withdrawCapacityInput } from '@/lib/inputs'
import { withdrawCapacity } from '../actions'

const COLUMNS = {
  name: { head: 'Person' },
  capacity: { head: 'Signs as' },
  statement: { head: 'Answers for' },
  granted: { head: 'Granted' },
  act: { head: 'Acts', isHeadHidden: true },
} satisfies Columns

interface CapacityTableProps {
  readonly capacities: readonly CapacityView[]
  readonly mayWithdraw: boolean
}

/** Every capacity that was granted, withdrawn ones included: signatures refer to them. */
export function CapacityTable({ capacities, mayWithdraw }: CapacityTableProps) {
  return (
    <DataTable label="Capacities" columns={COLUMNS}>
      {capacities.map((grant) => (
        <DataRow
          key={grant.id}
          columns={COLUMNS}
          cells={{
            name: grant.name,
            capacity: grant.capacity,
            statement: grant.statement,
            granted: (
              <>
                {grant.grantedByName}, <Timestamp at={grant.grantedAt} dateOnly />
              </>
            ),
            act:
              grant.withdrawnAt === null ? (
                mayWithdraw && <WithdrawCapacity grantId={grant.id} of={`${grant.capacity} of ${grant.name}`} />
              ) : (
                <span className="muted">withdrawn: {grant.withdrawReason}</span>
              ),
          }}
        />
      ))}
    </DataTable>
  )
}

function WithdrawCapacity({ grantId, of }: { grantId: string; of: string }) {
  const [isOpen, setIsOpen] = useState(false)
  const { form, submit, isPending, refusal } = useActionForm({
    schema: withdrawCapacityInput,
    action: withdrawCapacity,
    defaultValues: { grantId, reason: '' },
    onDone: () => setIsOpen(false),
  })
  return (
    <>
      <Button weight="quiet" aria-label={`Withdraw ${of}`} onPress={() => setIsOpen(true)}>
        Withdraw
      </Button>
      <SideDialog title={`Withdraw ${of}`} isOpen={isOpen} onOpenChange={setIsOpen}>
        <form className="form" onSubmit={submit}>
          <p>They can no longer sign in it. Signatures that they gave stay as they are.</p>
          <FormTextArea control={form.control} name="reason" label="Reason" rows={2} autoFocus />
          <FormFoot refusal={refusal} isPending={isPending} weight="grave" label="Withdraw" pendingLabel="Saving…" />
        </form>
      </SideDialog>
    </>
  )
}
