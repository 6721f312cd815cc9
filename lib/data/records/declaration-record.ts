import 'server-only'
import { z } from 'zod'
import { readStoredJson } from '@/lib/engine'
import {
  CONDITION_STATES,
  DECLARATION_VERDICTS,
  type Declaration,
  type DeclarationCondition,
  type DeclarationVerdict,
  type Done,
  type TakenOff,
} from '@/lib/review'
import { getCompanyName, getPersonName, type RevisionRecord } from './revision-record'
import { readWord } from './stored-words'

type DeclarationRow = RevisionRecord['declarations'][number]
type ConditionRow = DeclarationRow['conditions'][number]

const doneSchema: z.ZodType<Done> = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('fields'), changes: z.array(z.string()) }),
  z.object({ kind: z.literal('proposal'), id: z.string(), title: z.string() }),
  z.object({ kind: z.literal('file'), fileName: z.string(), sha256: z.string() }),
  z.object({ kind: z.literal('action'), id: z.string(), text: z.string() }),
  z.object({ kind: z.literal('no-change') }),
])

/** What was done about a thread or a condition; null where nobody was asked. */
export function readDone(doneJson: string | null): Done | null {
  return doneJson === null ? null : readStoredJson('what was done', doneSchema, doneJson)
}

/** Rows from before there were verdicts say yes or no. */
export function readVerdict({
  verdict,
  isBuildable,
}: Pick<DeclarationRow, 'verdict' | 'isBuildable'>): DeclarationVerdict {
  if (verdict !== null) return readWord(verdict, DECLARATION_VERDICTS, 'declaration')
  return isBuildable ? 'buildable' : 'not-buildable'
}

export function toDeclaration(record: RevisionRecord, row: DeclarationRow): Declaration {
  return {
    id: row.id,
    companyId: row.companyId,
    companyName: row.company.name,
    verdict: readVerdict(row),
    ...(row.verdict === null ? { isFromBefore: true } : {}),
    note: row.note,
    conditions: row.conditions.map((condition) => toCondition(record, condition)),
    madeBy: row.madeById,
    madeByName: getPersonName(record, row.madeById),
    madeAt: row.madeAt.toISOString(),
    contentHash: row.contentHash,
  }
}

function toCondition(record: RevisionRecord, row: ConditionRow): DeclarationCondition {
  return {
    id: row.id,
    text: row.text,
    field: row.field,
    fieldLabel: row.fieldLabel,
    value: row.value,
    state: readWord(row.state, CONDITION_STATES, 'state of a condition'),
    decidedByName: row.decidedById === null ? null : getPersonName(record, row.decidedById),
    decidedAt: row.decidedAt?.toISOString() ?? null,
    decisionNote: row.decisionNote,
    done: readDone(row.doneJson) ?? findAction(record, row),
  }
}

/** The action that a condition became. */
function findAction(record: RevisionRecord, { actionId }: ConditionRow): Done | null {
  const action = record.actions.find(({ id }) => id === actionId)
  return action === undefined ? null : { kind: 'action', id: action.id, text: action.text }
}

/** Fabricators that are off this release now; those that were put back are in the trail. */
export function listTakenOff(record: RevisionRecord): TakenOff[] {
  return record.exclusions
    .filter(({ putBackAt }) => putBackAt === null)
    .map((row) => ({
      companyId: row.companyId,
      companyName: getCompanyName(record, row.companyId),
      reason: row.reason,
      byName: getPersonName(record, row.takenOffById),
      at: row.takenOffAt.toISOString(),
    }))
}
