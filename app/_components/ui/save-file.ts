/** Saves a file of that name: a download that no server sees. */
export function saveFile(fileName: string, content: BlobPart, type: string): void {
  const address = URL.createObjectURL(new Blob([content], { type }))
  const link = document.createElement('a')
  link.href = address
  link.download = fileName
  link.click()
  URL.revokeObjectURL(address)
}
