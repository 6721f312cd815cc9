import 'server-only'
import type { ActRefusal } from '@/lib/data'

/** Why something was not done, for a page, a form or a program. */
export type ServerRefusal =
  | ActRefusal
  | { readonly kind: 'signed-out'; readonly message: string }
  | { readonly kind: 'not-found'; readonly message: string }
  | { readonly kind: 'not-allowed'; readonly message: string }
  | { readonly kind: 'unexpected'; readonly message: string; readonly errorId: string }
