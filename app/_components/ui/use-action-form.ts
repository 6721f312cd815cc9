'use client'

import { zodResolver } from '@hookform/resolvers/zod'
import { useRef, useState } from 'react'
import {
  type DefaultValues,
  type FieldErrors,
  type FieldPath,
  type FieldValues,
  type Resolver,
  type UseFormReturn,
  useForm,
} from 'react-hook-form'
import type { z } from 'zod'
import type { Issue } from '@/lib/engine/results'
import { type Action, getIssues, type ShownRefusal } from './action-result'
import { useAction } from './use-action'

interface ActionFormOptions<TIn extends FieldValues, TOut, TValue> {
  /** The same schema that the server's action parses with. */
  schema: z.ZodType<TOut, TIn>
  action: Action<TValue>
  defaultValues: DefaultValues<TIn>
  /** Called after success, with what the server returned. */
  onDone?: (value: TValue) => void
  /** Empties the form after success, for forms that are used again (a reply). */
  isResetOnDone?: boolean
}

export interface ActionForm<TIn extends FieldValues, TOut> {
  form: UseFormReturn<TIn, unknown, TOut>
  submit: (event?: React.BaseSyntheticEvent) => Promise<void>
  isPending: boolean
  /** What the server refused, apart from what stands beside its field. */
  refusal: ShownRefusal | null
  isDone: boolean
}

/**
 * One way to fill a form: the schema is checked in the browser and again on the server; a refusal lands beside its
 * field, or in the summary when it belongs to none; what was typed stays.
 */
export function useActionForm<TIn extends FieldValues, TOut, TValue>({
  schema,
  action,
  defaultValues,
  onDone,
  isResetOnDone = false,
}: ActionFormOptions<TIn, TOut, TValue>): ActionForm<TIn, TOut> {
  /** Names of the inputs on the screen, as the form library gives them along with what is to be checked. */
  const shown = useRef<Set<string>>(new Set())
  // The resolver's overloads cannot be chosen for a schema that is itself a type parameter.
  const check = zodResolver(schema as never) as unknown as Resolver<TIn, unknown, TOut>
  const form = useForm<TIn, unknown, TOut>({
    resolver: (values, context, options) => {
      for (const name of options.names ?? []) shown.current.add(name)
      return check(values, context, options)
    },
    defaultValues,
    mode: 'onTouched',
    reValidateMode: 'onChange',
  })
  const { send, isPending, refusal, clearRefusal } = useAction(action)
  const [isDone, setIsDone] = useState(false)
  const [unshown, setUnshown] = useState<ShownRefusal | null>(null)
  const refuseUnshown = (errors: FieldErrors<TIn>) => {
    clearRefusal()
    const issues = findUnshown(shown.current, errors)
    setUnshown(issues.length === 0 ? null : { kind: 'unsent', message: 'This cannot be sent yet.', issues })
  }
  const submit = form.handleSubmit(() => {
    setIsDone(false)
    setUnshown(null)
    send(
      form.getValues(),
      (value) => {
        setIsDone(true)
        if (isResetOnDone) form.reset()
        onDone?.(value)
      },
      (found) => showBesideFields(form, shown.current, found),
    )
  }, refuseUnshown)
  return { form, submit, isPending, refusal: refusal ?? unshown, isDone }
}

/** Puts each issue beside its field; returns the refusal with those that have no field on this form. */
function showBesideFields<TIn extends FieldValues, TOut>(
  form: UseFormReturn<TIn, unknown, TOut>,
  shown: ReadonlySet<string>,
  refusal: ShownRefusal,
): ShownRefusal {
  const rest = getIssues(refusal).filter((issue) => {
    const name = issue.path.join('.')
    // Hidden values (a version, an id) have no input.
    if (!shown.has(name)) return true
    form.setError(name as FieldPath<TIn>, { type: 'server', message: issue.message })
    return false
  })
  return 'issues' in refusal ? { ...refusal, issues: rest } : refusal
}

/** What the schema refuses in values that have no input of their own: nothing may fail without being said. */
function findUnshown<TIn extends FieldValues>(shown: ReadonlySet<string>, errors: FieldErrors<TIn>): Issue[] {
  const issues: Issue[] = []
  const visit = (node: unknown, path: (string | number)[]) => {
    if (typeof node !== 'object' || node === null) return
    if ('message' in node && typeof node.message === 'string' && 'type' in node) {
      if (!shown.has(path.join('.'))) issues.push({ code: 'invalid', path, message: node.message })
      return
    }
    for (const [key, child] of Object.entries(node)) if (key !== 'ref') visit(child, [...path, key])
  }
  visit(errors, [])
  return issues
}
