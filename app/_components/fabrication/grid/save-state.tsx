import { Notice } from '@/app/_components/ui/notices'

interface SaveStateProps {
  readonly unsavedCount: number
  readonly faultCount: number
}

/** How much of a grid is not saved, or cannot be. */
export function SaveState({ unsavedCount, faultCount }: SaveStateProps) {
  const unsaved = unsavedCount === 1 ? '1 row is not saved.' : `${unsavedCount} rows are not saved.`
  return (
    <div role="status">
      {faultCount > 0 ? (
        <Notice tone="caution">
          <p>
            {faultCount === 1 ? '1 row cannot be' : `${faultCount} rows cannot be`}: the cell shows the reason. You can
            save once they are corrected or removed. {unsavedCount > 0 && unsaved}
          </p>
        </Notice>
      ) : (
        <p className="small muted">{unsavedCount === 0 ? 'Everything here is saved.' : unsaved}</p>
      )}
    </div>
  )
}
