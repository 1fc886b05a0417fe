/** One sentence about what just happened; read out politely, gone at the next edit or on Escape. */
export function DeskMessage(props: { readonly text: string | undefined; readonly onDismiss: () => void }) {
  return (
    <div className="desk-message" role="status" aria-live="polite">
      {props.text === undefined ? null : (
        <p>
          {props.text}{' '}
          <button type="button" className="quiet" onClick={props.onDismiss}>
            Dismiss
          </button>
        </p>
      )}
    </div>
  );
}
