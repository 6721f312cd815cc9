import { Button } from '@/app/_components/ui/button'

/** Saving and leaving, at the end of a form of the catalogue. */
export function FormActs({ label, isPending, onClose }: { label: string; isPending: boolean; onClose: () => void }) {
  return (
    <div className="row">
      <Button type="submit" weight="strong" isPending={isPending} pendingLabel="Saving…">
        {label}
      </Button>
      <Button weight="quiet" onPress={onClose} isDisabled={isPending}>
        Cancel
      </Button>
    </div>
  )
}
