import type { Metadata } from 'next'
import { KeyTable } from '@/app/_components/review/key-table'
import { requireActor } from '@/app/_components/shell/require-actor'
import { PageHead, PageSection } from '@/app/_components/ui/section'
import { paths } from '@/lib/addresses'
import { getKeyRegister } from '@/lib/data'
import { VerifyForm } from './_components/verify-form'
import { MAX_UPLOADED_PACKAGE_BYTES } from './check-package'

export const metadata: Metadata = { title: 'Verify a package' }

export default async function VerifyPackagePage() {
  const actor = await requireActor(paths.verifyPackage())
  const { keys } = await getKeyRegister(actor)
  return (
    <div className="page-narrow">
      <PageHead
        title="Verify a package"
        under={
          <>
            <p>
              Checks that a release package is whole and unchanged: the SHA-256 of each file against the manifest, the
              manifest against its signature, and whether this installation signed it.
            </p>
            <p>
              The same check needs no server: <code>npm run package:verify -- file.zip</code>. The package’s README.txt
              says how to check it with sha256sum and openssl alone.
            </p>
          </>
        }
      />
      <VerifyForm maxBytes={MAX_UPLOADED_PACKAGE_BYTES} />
      <PageSection title="Keys of this installation">
        <p>
          Compare them with what a package says, by another way than the package itself. The{' '}
          <a href={paths.keyRegister()} download>
            signed register
          </a>{' '}
          is for the command: <code>--keys keys.json</code>.
        </p>
        <KeyTable keys={keys} />
      </PageSection>
    </div>
  )
}
