'use client'

import { FormNumber, FormText, FormTextArea } from '@/app/_components/ui/form-fields'
import { FormFoot } from '@/app/_components/ui/form-foot'
import { useActionForm } from '@/app/_components/ui/use-action-form'
import type { Profile } from '@/lib/engine/catalogue'
import { addProfileInput, changeProfileInput, removeProfileInput } from '@/lib/inputs'
import { addProfile, changeProfile, removeProfile } from '../actions'
import type { ProfileControl } from './controls'
import { ProfileRows } from './profile-rows'

interface FormProps {
  readonly version: number
  readonly questions: Readonly<Record<string, string>>
  readonly onClose: () => void
}

type Content = Omit<Profile, 'id' | 'name' | 'purpose'>

/** The parts that can be typed; the server makes the id. */
const contentOf = ({ items, limits, requiredFields, requiredSignatures, leastSurvivalPct }: Content) => ({
  items: items.map((item) => ({ ...item })),
  limits: limits.map((limit) => ({ ...limit })),
  requiredFields: requiredFields.map((required) => ({ ...required })),
  requiredSignatures: requiredSignatures ?? null,
  leastSurvivalPct: leastSurvivalPct ?? null,
})

/** @param from  the profile that is copied; null begins with an empty one */
export function AddProfileForm({ version, questions, onClose, from }: FormProps & { readonly from: Profile | null }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: addProfileInput,
    action: addProfile,
    defaultValues: {
      seenVersion: version,
      profile: {
        name: from === null ? '' : `${from.name}, own`,
        purpose: from?.purpose ?? '',
        ...contentOf(from ?? { items: [], limits: [], requiredFields: [] }),
      },
      reason: '',
    },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit} aria-label={from === null ? 'A new profile' : `Copy of ${from.name}`}>
      <ProfileFields control={form.control} questions={questions} />
      <FormText control={form.control} name="reason" label="Why it is added" />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Add the profile"
        pendingLabel="Saving…"
        onCancel={onClose}
      />
    </form>
  )
}

export function ChangeProfileForm({ version, questions, onClose, profile }: FormProps & { readonly profile: Profile }) {
  const { id, name, purpose } = profile
  const { form, submit, isPending, refusal } = useActionForm({
    schema: changeProfileInput,
    action: changeProfile,
    defaultValues: { seenVersion: version, profile: { id, name, purpose, ...contentOf(profile) }, reason: '' },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit} aria-label={`Change: ${name}`}>
      {/* The fields of a new profile and of one that is there are the same; only the latter knows its id. */}
      <ProfileFields control={form.control as unknown as ProfileControl} questions={questions} />
      <FormText control={form.control} name="reason" label="Why it is changed" />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Save the profile"
        pendingLabel="Saving…"
        onCancel={onClose}
      />
    </form>
  )
}

export function RemoveProfileForm({
  version,
  onClose,
  profile,
}: Omit<FormProps, 'questions'> & { readonly profile: Profile }) {
  const { form, submit, isPending, refusal } = useActionForm({
    schema: removeProfileInput,
    action: removeProfile,
    defaultValues: { seenVersion: version, profileId: profile.id, reason: '' },
    onDone: onClose,
  })
  return (
    <form className="form" onSubmit={submit} aria-label={`Remove: ${profile.name}`}>
      <p>Reviews that use an earlier version keep the profile. A profile that a project follows cannot be removed.</p>
      <FormText control={form.control} name="reason" label="Why it is removed" />
      <FormFoot
        refusal={refusal}
        isPending={isPending}
        weight="strong"
        label="Remove the profile"
        pendingLabel="Saving…"
        onCancel={onClose}
      />
    </form>
  )
}

function ProfileFields({ control, questions }: { control: ProfileControl; questions: FormProps['questions'] }) {
  return (
    <>
      <FormText control={control} name="profile.name" label="Name" />
      <FormTextArea control={control} name="profile.purpose" label="For which parts" rows={2} />
      <FormNumber
        control={control}
        name="profile.requiredSignatures"
        label="People who must sign, at least"
        hint="Blank: as the project’s sign-off policy says."
        isOptional
      />
      <FormNumber
        control={control}
        name="profile.leastSurvivalPct"
        label="Share that must survive, at least"
        unit="%"
        hint="Of parts with bends that move. Blank: none is required."
        isOptional
      />
      <ProfileRows control={control} questions={questions} />
    </>
  )
}
