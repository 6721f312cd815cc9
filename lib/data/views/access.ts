/** Who signed in, opened, fetched or was refused what. */
export type AccessKind = 'signed-in' | 'sign-in-refused' | 'revision-opened' | 'file-fetched' | 'refused'

export interface AccessEventView {
  readonly id: string
  readonly at: string
  readonly kind: AccessKind
  readonly userName: string
  readonly companyName: string
  readonly what: string
  /** The same word for the same network address; the address itself is not kept. */
  readonly source: string
  readonly device: string
}

export interface AccessLogView {
  /** The project's, or the company's. */
  readonly name: string
  readonly rows: readonly AccessEventView[]
  readonly total: number
  readonly keptDays: number
}
