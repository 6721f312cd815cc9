import { Button } from '@/app/_components/ui/button'
import { FileButton } from '@/app/_components/ui/file-button'
import { asFileSize } from '@/lib/engine/units'
import type { CommentFiles } from './use-comment-files'

/** Files that go with a comment that is being written, and what became of them. */
export function ChosenFiles({
  chosen: { files, add, remove, isSending, failure, sendAgain },
}: {
  chosen: CommentFiles
}) {
  return (
    <div className="stack">
      <div className="row">
        <FileButton
          label="Add a file"
          inputLabel="File for this comment"
          onChoose={(file) => {
            add([file])
            return Promise.resolve()
          }}
        />
        <span role="status" className="small muted">
          {isSending && 'Sending the files…'}
        </span>
      </div>
      {files.length > 0 && (
        <ul className="plain-list small" aria-label="Files for this comment">
          {files.map(({ key, name, file }) => (
            <li key={key} className="row">
              {name} <span className="muted">{asFileSize(file.size)}</span>
              <Button weight="quiet" isDisabled={isSending} onPress={() => remove(key)}>
                Remove<span className="sr-only"> {name}</span>
              </Button>
            </li>
          ))}
        </ul>
      )}
      {failure !== null && (
        <p className="field-error" role="alert">
          The comment is stored; a file is not. {failure}
        </p>
      )}
      {sendAgain !== null && (
        <div>
          <Button onPress={sendAgain}>Send the files again</Button>
        </div>
      )}
    </div>
  )
}
