'use client'

import { startRegistration } from '@simplewebauthn/browser'
import { useState } from 'react'
import { Button } from '@/app/_components/ui/button'
import { FormError } from '@/app/_components/ui/form-error'
import { TextField } from '@/app/_components/ui/text-field'
import { Timestamp } from '@/app/_components/ui/timestamp'
import { useAction } from '@/app/_components/ui/use-action'
import type { PasskeySetUp, PasskeyView } from '@/lib/data'
import { beginPasskeySetUp, finishPasskeySetUp, removePasskey } from '../actions'
import { WithPassword } from './with-password'

export function PasskeyList({ passkeys }: { passkeys: readonly PasskeyView[] }) {
  const [setUp, setSetUp] = useState<PasskeySetUp | null>(null)
  return (
    <div className="stack">
      {passkeys.length > 0 && (
        <ul className="plain-list">
          {passkeys.map((passkey) => (
            <li key={passkey.id}>
              {passkey.name}{' '}
              <span className="muted small">
                added <Timestamp at={passkey.createdAt} dateOnly />
                {passkey.usedAt !== null && (
                  <>
                    , last used <Timestamp at={passkey.usedAt} />
                  </>
                )}
              </span>
              <details>
                <summary>Remove “{passkey.name}”</summary>
                <WithPassword
                  action={removePasskey}
                  also={{ passkeyId: passkey.id }}
                  label={`Remove ${passkey.name}`}
                />
              </details>
            </li>
          ))}
        </ul>
      )}
      {setUp === null ? (
        <details>
          <summary>Add a passkey</summary>
          <WithPassword
            action={beginPasskeySetUp}
            label="Continue"
            hint="A passkey is stored in your device or security key. It signs you in on its own, and replaces the code after a password."
            onDone={setSetUp}
          />
        </details>
      ) : (
        <NewPasskey setUp={setUp} onDone={() => setSetUp(null)} />
      )}
    </div>
  )
}

function NewPasskey({ setUp, onDone }: { setUp: PasskeySetUp; onDone: () => void }) {
  const [name, setName] = useState('')
  const [problem, setProblem] = useState<string | null>(null)
  const { send, isPending, refusal } = useAction(finishPasskeySetUp)
  const add = async () => {
    setProblem(null)
    try {
      const response = await startRegistration({ optionsJSON: setUp.options })
      send({ token: setUp.token, name, response }, onDone)
    } catch {
      setProblem('No passkey was created. Try again.')
    }
  }
  return (
    <div className="stack">
      <TextField
        label="Name of the passkey"
        value={name}
        onChange={setName}
        hint="For example, the device it is stored in."
      />
      <FormError refusal={problem === null ? refusal : { kind: 'unsent', message: problem, issues: [] }} />
      <div className="row">
        <Button weight="strong" isPending={isPending} isDisabled={name.trim() === ''} onPress={add}>
          Add the passkey
        </Button>
      </div>
    </div>
  )
}
