'use client'

import { useState } from 'react'
import { ProfileContents } from '@/app/_components/review/profile-contents'
import { Button } from '@/app/_components/ui/button'
import type { Profile } from '@/lib/engine/catalogue'
import { AddProfileForm, ChangeProfileForm, RemoveProfileForm } from './profile-form'

interface ProfilesProps {
  readonly delivered: readonly Profile[]
  readonly own: readonly Profile[]
  readonly questions: Readonly<Record<string, string>>
  readonly version: number
  readonly mayEdit: boolean
}

type Open = { act: 'add' } | { act: 'copy' | 'change' | 'remove'; profileId: string } | null

/** Layers over the catalogue for kinds of parts: the delivered ones, to copy, and the workspace's own. */
export function Profiles({ delivered, own, questions, version, mayEdit }: ProfilesProps) {
  const [open, setOpen] = useState<Open>(null)
  const close = () => setOpen(null)
  const isOwn = (profile: Profile) => own.includes(profile)
  const shown = { version, questions, onClose: close }
  return (
    <div className="stack">
      {[...own, ...delivered].map((profile) => {
        const act = open !== null && open.act !== 'add' && open.profileId === profile.id ? open.act : null
        return (
          <article className="catalogue-entry" key={profile.id} id={profile.id}>
            <div>
              <h3>{profile.name}</h3>
              <p className="small muted">{isOwn(profile) ? 'of this workspace' : 'as delivered'}</p>
            </div>
            <div className="stack">
              <p>{profile.purpose}</p>
              <details>
                <summary className="small">What it asks for: {profile.name}</summary>
                <ProfileContents profile={profile} questions={questions} />
              </details>
              {mayEdit && open === null && (
                <div className="row no-print">
                  <Button
                    weight="quiet"
                    aria-label={`Copy: ${profile.name}`}
                    onPress={() => setOpen({ act: 'copy', profileId: profile.id })}
                  >
                    Copy
                  </Button>
                  {isOwn(profile) && (
                    <>
                      <Button
                        weight="quiet"
                        aria-label={`Change: ${profile.name}`}
                        onPress={() => setOpen({ act: 'change', profileId: profile.id })}
                      >
                        Change
                      </Button>
                      <Button
                        weight="quiet"
                        aria-label={`Remove: ${profile.name}`}
                        onPress={() => setOpen({ act: 'remove', profileId: profile.id })}
                      >
                        Remove
                      </Button>
                    </>
                  )}
                </div>
              )}
              {act === 'copy' && <AddProfileForm {...shown} from={profile} />}
              {act === 'change' && <ChangeProfileForm {...shown} profile={profile} />}
              {act === 'remove' && <RemoveProfileForm {...shown} profile={profile} />}
            </div>
          </article>
        )
      })}
      {mayEdit && open === null && (
        <div className="no-print">
          <Button onPress={() => setOpen({ act: 'add' })}>Add a profile</Button>
        </div>
      )}
      {open?.act === 'add' && <AddProfileForm {...shown} from={null} />}
    </div>
  )
}
