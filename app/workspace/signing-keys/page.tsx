import type { Metadata } from 'next'
import Link from 'next/link'
import { KeyTable } from '@/app/_components/review/key-table'
import { readOrNotFound, requireActor } from '@/app/_components/shell/require-actor'
import { LinkButton } from '@/app/_components/ui/button'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getKeyRegister, getSecondFactor, getSettingsView } from '@/lib/data'
import { CompromisedForm, RotateForm } from './_components/key-forms'

export const metadata: Metadata = { title: 'Signing keys' }

/** Which keys this installation has signed with; an admin puts another in place of the one in use. */
export default async function SigningKeysPage() {
  const actor = await requireActor(paths.signingKeys())
  const [{ keys }, factor] = await readOrNotFound(async () => {
    // Everybody may read the register; the forms are an admin's.
    await getSettingsView(actor)
    return Promise.all([getKeyRegister(actor), getSecondFactor(actor)])
  })
  const retired = keys.filter(({ retiredAt }) => retiredAt !== null)
  return (
    <>
      <PageHead
        title="Signing keys"
        over={<Link href={paths.workspace()}>Workspace</Link>}
        actions={
          <LinkButton href={paths.keyRegister()} weight="quiet" download>
            Download the register (JSON)
          </LinkButton>
        }
        under="The installation signs packages, status lists and checkpoints; no person holds a key. Publish the fingerprint of the key in use where your fabricators and customers find it by another way than the package."
      />
      <KeyTable keys={keys} />
      <PageSection title="Put another key in use">
        <p>
          Packages that were signed with the key so far stay valid under it. The new key’s private half is written into
          the folder <code>secrets</code> of the data folder: keep a copy of that folder elsewhere.
        </p>
        <RotateForm factor={factor} />
      </PageSection>
      {retired.length > 0 && (
        <PageSection title="Report an earlier key compromised">
          <p>
            From that day on a signature of this key proves nothing by itself: packages under it are refused unless a
            trusted time stamp shows that they are older.
          </p>
          <CompromisedForm
            factor={factor}
            keys={retired.map(({ fingerprint, since }) => ({ fingerprint, since: since.slice(0, 10) }))}
          />
        </PageSection>
      )}
    </>
  )
}
