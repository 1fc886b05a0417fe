import { type ReactNode, useEffect, useRef } from 'react';

/** A modal dialog of the browser's own: it keeps the focus, closes on Escape, and gives the focus back. */
export function Dialog(props: {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ReactNode;
  readonly wide?: boolean;
}) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = ref.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={ref}
      className={props.wide === true ? 'dialog wide' : 'dialog'}
      aria-label={props.title}
      onCancel={(event) => {
        event.preventDefault();
        props.onClose();
      }}
    >
      <header>
        <h2>{props.title}</h2>
        <button type="button" className="quiet" onClick={props.onClose}>
          Close
        </button>
      </header>
      {props.children}
    </dialog>
  );
}
