import 'server-only'
import { revalidatePath } from 'next/cache'
import { unstable_rethrow } from 'next/navigation'
import type { z } from 'zod'
import * as data from '@/lib/data'
import { type AccessPlace, type Actor, type ActResult, openSession, type Visit } from '@/lib/data'
import { ACTS, type ActInput, type ActName } from '@/lib/inputs'
import { notingRefusal } from './access-notes'
import { explainError, explainInput, SIGNED_OUT } from './expected-errors'
import { countRefusal } from './metrics'
import type { ServerRefusal } from './refusal'
import { inTurn, type Queued } from './route'
import { getActor, keepSession } from './session'
import { getVisit } from './visit'

export type ActionResult<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly refusal: ServerRefusal }

/** What an act comes to when it is carried out. */
type Done<K extends ActName> = Awaited<ReturnType<(typeof data)[K]>> extends ActResult<infer T> ? T : never

/** Each act with the type that its own schema gives. */
const DECLARED: { readonly [K in ActName]: { readonly input: z.ZodType<ActInput<K>> } } = ACTS

/** The data layer's function for each act takes what the act's schema lets through: the compiler compares them. */
const FUNCTIONS: { readonly [K in ActName]: (actor: Actor, input: ActInput<K>) => Promise<ActResult<Done<K>>> } = data

/**
 * A server action: checks what was sent, finds who is acting, calls one data function, and turns every failure into an
 * answer that a form can show. What the screens show is reloaded after a success.
 *
 * @example export const answerItem = action('answerItem')
 */
export function action<K extends ActName>(
  name: K,
  queued: Queued = {},
): (input: unknown) => Promise<ActionResult<Done<K>>> {
  return actionOf(DECLARED[name].input, FUNCTIONS[name], queued)
}

/** As `action`, where the data function is called with something beside what the form sends. */
export function actionOf<S extends z.ZodType, T>(
  schema: S,
  run: (actor: Actor, input: z.infer<S>) => Promise<ActResult<T>>,
  queued: Queued = {},
): (input: unknown) => Promise<ActionResult<T>> {
  return async (input) =>
    answer(run.name, async () => {
      // Who is acting comes before what was sent: a stranger learns nothing of either.
      const actor = await getActor()
      if (actor === null) return { ok: false, refusal: SIGNED_OUT }
      return withInput(schema, input, (parsed) => {
        const asked = { place: readPlace(parsed), what: `the act ${run.name}` }
        return notingRefusal(actor, asked, () => inTurn(queued, actor, () => run(actor, parsed)))
      })
    })
}

const PLACES = ['projectId', 'revisionId', 'companyId'] as const

/** What an act is on, by the ids that were sent with it. */
function readPlace(input: unknown): AccessPlace {
  const fields = typeof input === 'object' && input !== null ? (input as Readonly<Record<string, unknown>>) : {}
  return Object.fromEntries(PLACES.flatMap((name) => (typeof fields[name] === 'string' ? [[name, fields[name]]] : [])))
}

/** As `action`, for the few things that a visitor does. */
export function visitorAction<S extends z.ZodType, T>(
  schema: S,
  run: (input: z.infer<S>, visit: Visit) => Promise<ActResult<T>>,
): (input: unknown) => Promise<ActionResult<T>> {
  return async (input) =>
    answer(run.name, () => withInput(schema, input, async (parsed) => run(parsed, await getVisit())))
}

/**
 * As `visitorAction`, for what makes an account: the first set-up and accepting an invitation. This browser is then signed
 * in to it.
 */
export function joiningAction<S extends z.ZodType, T extends { readonly userId: string }>(
  schema: S,
  method: 'invitation' | 'set-up',
  run: (input: z.infer<S>, visit: Visit) => Promise<ActResult<T>>,
): (input: unknown) => Promise<ActionResult<T>> {
  return async (input) =>
    answer(run.name, () =>
      withInput(schema, input, async (parsed) => {
        const visit = await getVisit()
        const result = await run(parsed, visit)
        if (result.ok) await keepSession(await openSession(result.value.userId, method, visit))
        return result
      }),
    )
}

async function answer<T>(doing: string, run: () => Promise<ActionResult<T>>): Promise<ActionResult<T>> {
  const result = await carryOut(doing, run)
  if (!result.ok) countRefusal(result.refusal.kind)
  return result
}

async function carryOut<T>(doing: string, run: () => Promise<ActionResult<T>>): Promise<ActionResult<T>> {
  try {
    const result = await run()
    if (result.ok) revalidatePath('/', 'layout')
    return result
  } catch (error) {
    // Redirects and the like travel as errors of the framework's own.
    unstable_rethrow(error)
    return { ok: false, refusal: explainError(error, doing) }
  }
}

async function withInput<S extends z.ZodType, T>(
  schema: S,
  input: unknown,
  run: (parsed: z.infer<S>) => Promise<ActionResult<T>>,
): Promise<ActionResult<T>> {
  const parsed = schema.safeParse(input)
  return parsed.success ? run(parsed.data) : { ok: false, refusal: explainInput(parsed.error.issues) }
}
