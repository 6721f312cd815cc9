import { type Columns, DataRow, DataTable } from '@/app/_components/ui/data-table'
import { Timestamp } from '@/app/_components/ui/timestamp'
import type { KeyRegister } from '@/lib/package'

const COLUMNS = {
  fingerprint: { head: 'Fingerprint (SHA-256)', isRowHead: true },
  since: { head: 'Since (UTC)', className: 'nowrap' },
  until: { head: 'Until (UTC)', className: 'nowrap' },
  state: { head: 'State' },
} satisfies Columns

/** The keys of the installation, newest first: what people compare a package's fingerprint with. */
export function KeyTable({ keys }: Pick<KeyRegister, 'keys'>) {
  return (
    <DataTable label="Signing keys" columns={COLUMNS}>
      {[...keys].reverse().map(({ fingerprint, since, retiredAt, compromisedAt, reason }) => (
        <DataRow
          key={fingerprint}
          columns={COLUMNS}
          cells={{
            fingerprint: <span className="hash">{fingerprint}</span>,
            since: <Timestamp at={since} />,
            until: retiredAt === null ? 'in use' : <Timestamp at={retiredAt} />,
            state:
              compromisedAt !== null
                ? `compromised since ${compromisedAt.slice(0, 10)}: ${reason}`
                : retiredAt === null
                  ? 'signs packages and lists'
                  : `retired: ${reason}`,
          }}
        />
      ))}
    </DataTable>
  )
}
