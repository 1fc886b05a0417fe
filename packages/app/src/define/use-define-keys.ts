import { useEffect } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { chordOf, commandForChord } from '../record/desk-commands.ts';

/** Undo and redo from anywhere on the desk; a field that is being written in keeps its own undo. */
export function useDefineKeys(desk: RecordDesk): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || event.isComposing) return;
      if (document.querySelector('dialog[open]') !== null) return;
      const { target } = event;
      const writing =
        target instanceof HTMLTextAreaElement ||
        (target instanceof HTMLInputElement && !['checkbox', 'radio'].includes(target.type));
      if (writing) return;
      const command = commandForChord(chordOf(event));
      if (command?.group !== 'study' || (command.id !== 'study.undo' && command.id !== 'study.redo')) return;
      event.preventDefault();
      command.run(desk);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [desk]);
}
