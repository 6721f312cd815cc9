import Link from 'next/link'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { paths } from '@/lib/addresses'
import type { SecondFactorView, SignatureView } from '@/lib/data'
import { TakeBackSignature } from './take-back-signature'

interface SignatureListProps {
  signatures: readonly SignatureView[]
  projectId: string
  revisionId: string
  factor: SecondFactorView
}

/** The application voids a signature because of a change; the person who made the change did not void it. */
function explainVoiding({ isWithdrawn, voidedBy }: SignatureView): string {
  if (isWithdrawn) return ' by the signer'
  return ` by the application${voidedBy === null ? '' : `, because of a change by ${voidedBy.name}`}`
}

/** Signatures, voided ones included: who, in what capacity, on which content, and which fields changed since. */
export function SignatureList({ signatures, projectId, revisionId, factor }: SignatureListProps) {
  if (signatures.length === 0) return <p className="muted">No signatures yet.</p>
  return (
    <ul className="signatures">
      {signatures.map((signature) => (
        <li key={signature.id} data-voided={signature.voidedAt !== null || undefined}>
          <p>
            <strong>{signature.signer.name}</strong>, {signature.capacity}, <Timestamp at={signature.signedAt} />
            {signature.grantedBy !== null && (
              <span className="muted"> (capacity granted by {signature.grantedBy})</span>
            )}
            {signature.voidedAt !== null && <span className="voided"> voided</span>}
          </p>
          <p className="small">{signature.statement}</p>
          <p className="small muted">
            content <span className="hash">{signature.contentHash}</span>
            {signature.voidedAt !== null && (
              <>
                {' '}
                <Link
                  href={paths.compare(projectId, {
                    from: `signature:${signature.id}`,
                    to: `revision:${revisionId}`,
                  })}
                >
                  what has changed since
                </Link>
              </>
            )}
          </p>
          {signature.mayWithdraw && <TakeBackSignature signatureId={signature.id} factor={factor} />}
          {signature.voidedAt !== null && (
            <div className="small">
              <p>
                Voided <Timestamp at={signature.voidedAt} />
                {explainVoiding(signature)}
                {signature.voidReason !== null && `: ${signature.voidReason}`}
              </p>
              {signature.changes.length > 0 && (
                <ul className="changes">
                  {signature.changes.map((change) => (
                    <li key={change}>{change}</li>
                  ))}
                </ul>
              )}
            </div>
          )}
        </li>
      ))}
    </ul>
  )
}
