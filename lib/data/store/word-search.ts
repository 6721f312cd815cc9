import 'server-only'
import type { Prisma } from '../generated/sqlite/client'
import { describeDatabase } from './read-together'

/*
 * Finds texts by the databases' own indexes of words: FTS5 of SQLite, tsvector and GIN of PostgreSQL. Both part texts at whatever is neither letter nor
 * digit, take no account of letter case, and find words by their beginnings. Both migrations named `search_by_words` make them.
 */

/** Tables of SQLite's index, which holds nothing of its own: a pattern with \\ as its escape. PostgreSQL has indexes in their place. */
export const SEARCH_TABLES = '\\_search%'

/** What is found: projects by their own text, threads by theirs and their comments', revisions by the reasons of their answers. */
export type Searched = 'project' | 'thread' | 'answered-revision'

interface Found {
  /** Newest first. */
  readonly ids: readonly string[]
  /** Whether there are older ones. */
  readonly isMore: boolean
}

interface WordSearch {
  /** In whose projects. */
  readonly userId: string
  /** Every one of them must occur. */
  readonly words: readonly string[]
  readonly most: number
}

/** Sentences that hold the words, by what they belong to. */
const TEXTS = {
  project: [{ kind: 'project', table: 'Project', text: `"name" || ' ' || "description"`, owner: 'id' }],
  thread: [
    { kind: 'thread', table: 'Thread', text: `"title" || ' ' || "anchorLabel"`, owner: 'id' },
    { kind: 'comment', table: 'Comment', text: '"text"', owner: 'threadId' },
  ],
  'answered-revision': [{ kind: 'answer', table: 'Answer', text: '"reason"', owner: 'revisionId' }],
} as const

/** Whether an index can tell anything of it: signs alone are no word. */
export const isIndexed = (word: string): boolean => /[\p{L}\p{N}]/u.test(word)

/**
 * Candidates alone: who may see them, and whether the words stand there as they were typed, is for the caller to look at.
 *
 * @param words  at least one, each of which `isIndexed`
 */
export async function searchWords(
  tx: Pick<Prisma.TransactionClient, '$queryRawUnsafe'>,
  searched: Searched,
  { userId, words, most }: WordSearch,
): Promise<Found> {
  const { kind, quote } = describeDatabase(tx)
  const values: string[] = []
  const place = (value: string): string => {
    values.push(value)
    return kind === 'sqlite' ? '?' : `$${values.length}`
  }
  const owners = (word: string): string =>
    kind === 'sqlite'
      ? `SELECT r."ownerId" FROM "_search_text" JOIN "_search_row" r ON r."number" = "_search_text".rowid
         WHERE "_search_text" MATCH ${place(`"${word.replaceAll('"', ' ')}"*`)} AND r."kind" IN (${TEXTS[searched].map((text) => `'${text.kind}'`).join(', ')})`
      : TEXTS[searched]
          .map(
            ({ table, text, owner }) =>
              `SELECT "${owner}" FROM ${quote(table)} WHERE ${quote('search_words')}(${text}) @@ (
                 SELECT string_agg(quote_literal(lexeme) || ':*', ' & ')::tsquery FROM unnest(${quote('search_words')}(${place(word)})))`,
          )
          .join(' UNION ALL ')
  const mine = `(SELECT "projectId" FROM ${quote('Membership')} WHERE "userId" = ${place(userId)})`
  const from = {
    project: `SELECT s."id" AS "id" FROM ${quote('Project')} s WHERE s."id" IN ${mine}`,
    thread: `SELECT s."id" AS "id" FROM ${quote('Thread')} s JOIN ${quote('Revision')} v ON v."id" = s."revisionId" WHERE v."projectId" IN ${mine}`,
    'answered-revision': `SELECT s."id" AS "id" FROM ${quote('Revision')} s WHERE s."projectId" IN ${mine}`,
  }[searched]
  const holding = words.map((word) => `s."id" IN (${owners(word)})`).join(' AND ')
  const newest = searched === 'thread' ? 's."openedAt"' : 's."createdAt"'
  const rows = await tx.$queryRawUnsafe<{ id: string }[]>(
    `${from} AND ${holding} ORDER BY ${newest} DESC, s."id" DESC LIMIT ${most + 1}`,
    ...values,
  )
  return { ids: rows.slice(0, most).map(({ id }) => id), isMore: rows.length > most }
}
