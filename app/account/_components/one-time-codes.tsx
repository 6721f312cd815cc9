'use client'

import { useState } from 'react'
import { renderSVG } from 'uqr'
import { CopyText } from '@/app/_components/ui/copy-text'
import { FormText } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { CodeSetUp, SecondFactorView } from '@/lib/data'
import { codeSetUpInput } from '@/lib/inputs'
import { beginCodeSetUp, finishCodeSetUp, removeCodes, renewRecoveryCodes } from '../actions'
import { WithPassword } from './with-password'

export function OneTimeCodes({ factor }: { factor: SecondFactorView }) {
  const [setUp, setSetUp] = useState<CodeSetUp | null>(null)
  const [recoveryCodes, setRecoveryCodes] = useState<readonly string[] | null>(null)
  const hasFactor = factor.hasCodes || factor.passkeys.length > 0
  return (
    <div className="stack">
      {recoveryCodes !== null && <RecoveryCodeList codes={recoveryCodes} />}
      {setUp !== null ? (
        <FirstCode
          setUp={setUp}
          onDone={(codes) => {
            setSetUp(null)
            setRecoveryCodes(codes)
          }}
        />
      ) : factor.hasCodes ? (
        <>
          <p>One-time codes are on: signing in asks for one after the password.</p>
          <details>
            <summary>Turn one-time codes off</summary>
            <WithPassword action={removeCodes} label="Turn off one-time codes" />
          </details>
        </>
      ) : (
        <details>
          <summary>Turn one-time codes on</summary>
          <WithPassword
            action={beginCodeSetUp}
            label="Turn on one-time codes"
            hint="A program on your phone then shows a new code every 30 seconds."
            onDone={setSetUp}
          />
        </details>
      )}
      {hasFactor && (
        <details>
          <summary>Recovery codes: {factor.recoveryCodesLeft} unused</summary>
          <WithPassword
            action={renewRecoveryCodes}
            label="Make new recovery codes"
            hint="The old ones stop working."
            onDone={(value) => setRecoveryCodes(value.recoveryCodes)}
          />
        </details>
      )}
    </div>
  )
}

function FirstCode({ setUp, onDone }: { setUp: CodeSetUp; onDone: (codes: readonly string[]) => void }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: codeSetUpInput,
    action: finishCodeSetUp,
    defaultValues: { token: setUp.token, code: '' },
    onDone: (value) => onDone(value.recoveryCodes),
  })
  const picture = `data:image/svg+xml;utf8,${encodeURIComponent(renderSVG(setUp.address))}`
  return (
    <form className="form" onSubmit={submit} aria-label="First one-time code">
      <p>Scan this with the authenticator on your phone, or type the key into it.</p>
      {/* biome-ignore lint/performance/noImgElement: drawn in the browser; the address of the picture is the picture */}
      <img src={picture} alt="QR code of the key below" width={200} height={200} />
      <CopyText label="Key" text={setUp.secret} />
      <FormText control={form.control} name="code" label="Current code" autoComplete="one-time-code" autoFocus />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Confirm the code"
        pendingLabel="Checking…"
      />
    </form>
  )
}

function RecoveryCodeList({ codes }: { codes: readonly string[] }) {
  return (
    <div className="notice" role="status">
      <p>
        Recovery codes, shown only once. Each replaces a code, one time. Keep them where you can reach them without your
        phone.
      </p>
      <ul className="plain-list">
        {codes.map((code) => (
          <li key={code}>
            <code>{code}</code>
          </li>
        ))}
      </ul>
    </div>
  )
}
