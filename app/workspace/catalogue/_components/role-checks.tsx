'use client'

import { CheckboxField } from '@/app/_components/ui/choice-fields'

const ROLES = ['member', 'lead', 'fabricator'] as const
export type AnsweringRole = (typeof ROLES)[number]

const WORDS: Record<AnsweringRole, string> = {
  member: 'members',
  lead: 'lead engineers',
  fabricator: 'the fabricator',
}

interface RoleChecksProps {
  value: readonly AnsweringRole[]
  onChange: (roles: AnsweringRole[]) => void
  error: string | undefined
}

/** Who may answer an item; a lead may answer whatever a member may. */
export function RoleChecks({ value, onChange, error }: RoleChecksProps) {
  return (
    <fieldset className="field">
      <legend className="field-label">Answered by</legend>
      <div className="row">
        {ROLES.map((role) => (
          <CheckboxField
            key={role}
            isSelected={value.includes(role)}
            onChange={(isIn) => onChange(ROLES.filter((other) => (other === role ? isIn : value.includes(other))))}
          >
            {WORDS[role]}
          </CheckboxField>
        ))}
      </div>
      {error !== undefined && (
        <p className="field-error" role="alert">
          {error}
        </p>
      )}
    </fieldset>
  )
}
