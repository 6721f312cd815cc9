/** What a project and a company may keep of files, and how much of it is taken. */
export interface FileRoomView {
  readonly mostBytesPerFile: number
  readonly shares: readonly {
    /** `the project`, or the company's name. */
    readonly of: string
    readonly usedBytes: number
    readonly mostBytes: number
  }[]
}
