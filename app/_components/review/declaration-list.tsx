import { Timestamp } from '@/app/_components/ui/timestamp'
import type { DeclarationView, PersonView } from '@/lib/data'
import { capitalise } from '@/lib/engine/units'
import { CONDITION_WORDS, DECLARATION_WORDS } from '@/lib/review'
import { ConditionActs } from './condition-acts'

/** What fabricators said, each condition with what became of it. */
export function DeclarationList({
  declarations,
  team,
}: {
  declarations: readonly DeclarationView[]
  team: readonly PersonView[]
}) {
  return (
    <ul className="signatures">
      {declarations.map((declaration) => (
        <li key={declaration.id}>
          <p>
            <strong>{capitalise(DECLARATION_WORDS[declaration.verdict])}</strong>, {declaration.company.name},{' '}
            {declaration.madeBy.name}, <Timestamp at={declaration.madeAt} />{' '}
            <span className={declaration.stands ? 'muted' : 'voided'}>
              {declaration.stands ? 'on the present content' : 'on earlier content: no longer valid'}
            </span>
          </p>
          {declaration.note !== '' && <p className="said">{declaration.note}</p>}
          {declaration.isFromBefore && declaration.verdict === 'buildable' && declaration.note !== '' && (
            <p className="muted small">
              Made before conditions were lines of their own: the note may hold one, so the fabricator must declare
              again.
            </p>
          )}
          {declaration.conditions.length > 0 && (
            <ol className="plain-list">
              {declaration.conditions.map((condition) => (
                <li key={condition.id}>
                  <p className="said">{condition.text}</p>
                  <p className="muted small">
                    {condition.state === 'open' ? CONDITION_WORDS.open : condition.decision}
                    {condition.decidedBy !== null && condition.decidedAt !== null && (
                      <>
                        {' '}
                        ({condition.decidedBy}, <Timestamp at={condition.decidedAt} />)
                      </>
                    )}
                  </p>
                  {condition.options !== null && (
                    <ConditionActs
                      key={`${condition.version}`}
                      condition={condition}
                      options={condition.options}
                      team={team}
                    />
                  )}
                </li>
              ))}
            </ol>
          )}
        </li>
      ))}
    </ul>
  )
}
